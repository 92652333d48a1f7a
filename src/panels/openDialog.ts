/** The dialog that stands open over the bench. */
export type OpenDialog = 'cautions' | 'shortcuts' | 'words' | null;
