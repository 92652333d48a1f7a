/** The open ring with a cross, as printers register sheets by, that marks the estimated neutral point. */
export function NeutralPointSign() {
  return (
    <g className="np-sign">
      <path className="np-halo" d="M0-6A6 6 0 1 1 0 6A6 6 0 1 1 0-6M-10 0H10M0-10V10" />
      <path d="M0-6A6 6 0 1 1 0 6A6 6 0 1 1 0-6M-10 0H10M0-10V10" />
    </g>
  );
}
