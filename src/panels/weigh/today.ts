/** Today by the person's own calendar, as "2026-05-12". */
export function today(): string {
  const now = new Date();
  const two = (figure: number) => String(figure).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
