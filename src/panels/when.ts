const DAY_MS = 86_400_000;

/** When something was, as it is said in a list: "just now", "14:05", "yesterday 14:05", "3 March 2026". Local time. */
export function whenWords(atMs: number, nowMs: number): string {
  const at = new Date(atMs);
  const time = `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
  if (nowMs - atMs >= 0 && nowMs - atMs < 60_000) return 'just now';
  const days = Math.round((startOfDay(nowMs) - startOfDay(atMs)) / DAY_MS);
  if (days === 0) return `today ${time}`;
  if (days === 1) return `yesterday ${time}`;
  return `${at.getDate()} ${MONTHS[at.getMonth()]} ${at.getFullYear()}`;
}

const startOfDay = (ms: number) => new Date(ms).setHours(0, 0, 0, 0);

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
