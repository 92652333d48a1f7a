/** The little that is used of the File System Access API. */
export interface FileHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
}

interface PickerOptions {
  readonly types: typeof FILE_TYPES;
  readonly suggestedName?: string;
  readonly multiple?: boolean;
}

/** How a browser lets a person choose files: with handles where it can, else by input and download. */
export interface FilePickers {
  readonly showOpenFilePicker?: (options: PickerOptions) => Promise<readonly FileHandle[]>;
  readonly showSaveFilePicker?: (options: PickerOptions) => Promise<FileHandle>;
  chooseFile(accept: string): Promise<File | null>;
  /** `type` is a media type; an aircraft's when left out. */
  download(name: string, content: string | Uint8Array<ArrayBuffer>, type?: string): void;
}

export const FILE_TYPES = [
  { description: 'Counterpoise aircraft', accept: { 'application/json': ['.json'] } },
] as const;

/** The pickers of a browser window. */
export function browserPickers(window: Window): FilePickers {
  const native = window as Window & Pick<FilePickers, 'showOpenFilePicker' | 'showSaveFilePicker'>;
  const { document } = window;
  return {
    ...(native.showOpenFilePicker && { showOpenFilePicker: native.showOpenFilePicker.bind(window) }),
    ...(native.showSaveFilePicker && { showSaveFilePicker: native.showSaveFilePicker.bind(window) }),
    chooseFile: (accept) =>
      new Promise((resolve) => {
        const input = document.createElement('input');
        input.type = 'file';
        input.accept = accept;
        input.addEventListener('change', () => resolve(input.files?.[0] ?? null));
        input.addEventListener('cancel', () => resolve(null));
        input.click();
      }),
    download: (name, content, type = 'application/json') => {
      const url = URL.createObjectURL(new Blob([content], { type }));
      const link = document.createElement('a');
      link.href = url;
      link.download = name;
      link.click();
      // The browser reads the blob after this turn; the address can go once it has.
      window.setTimeout(() => URL.revokeObjectURL(url), 60_000);
    },
  };
}
