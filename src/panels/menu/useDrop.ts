import { useEffect, useRef } from 'react';

/** What is dropped anywhere on the page, of which a text holds no file; without this the browser would show the file in place of the page. */
export function useDrop(onFiles: (files: DataTransfer['files']) => void): void {
  const latest = useRef(onFiles);
  latest.current = onFiles;
  useEffect(() => {
    const ours = ({ dataTransfer, target }: DragEvent) =>
      dataTransfer?.types.includes('Files') ||
      !(target instanceof HTMLElement && target.closest('input, textarea'));
    const over = (event: DragEvent) => {
      if (ours(event)) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      if (!ours(event)) return;
      event.preventDefault();
      const files = event.dataTransfer?.files;
      if (files) latest.current(files);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, []);
}
