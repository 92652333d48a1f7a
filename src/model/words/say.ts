/** How figures are put into words: in the person's units, and stations from their reference point. */
export interface Say {
  length(mm: number): string;
  station(mm: number): string;
  mass(g: number): string;
}
