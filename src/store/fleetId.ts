/** A place in the fleet that nothing has yet: the time and chance, so that two browsers hardly ever name the same. */
export const newFleetId = (): string =>
  Date.now().toString(36) + Math.random().toString(36).slice(2, 10).padEnd(8, '0');
