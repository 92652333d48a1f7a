import { useEffect, useRef } from 'react';

/** Files dropped anywhere on the page; without this the browser would show the file in place of the page. */
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
      if (files && files.length > 0) latest.current(files);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, []);
}
