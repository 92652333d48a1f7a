/** What a balance row guards. */
export type Limit = 'forward' | 'aft' | 'left' | 'right';
