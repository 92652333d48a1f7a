import { createContext } from 'react';
import type { FileActions } from './fileActions';

/** What saves and opens, for places deep in the card. */
export const FilesContext = createContext<FileActions | null>(null);
