import { useEffect } from 'react';
import { useView } from '../store/react';

/** Writes the theme that is in force to the page: the person's, or else the system's. */
export function useTheme(): void {
  const theme = useView((view) => view.theme);
  useEffect(() => {
    const dark = matchMedia('(prefers-color-scheme: dark)');
    const write = () => {
      document.documentElement.dataset.theme = theme === 'system' ? (dark.matches ? 'dark' : 'light') : theme;
    };
    write();
    dark.addEventListener('change', write);
    return () => dark.removeEventListener('change', write);
  }, [theme]);
}
