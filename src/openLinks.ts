import { carriesAircraft } from './files/link/linkMark';

/**
 * Opens the aircraft that the page’s address carries, now and whenever one is pasted into it. The address is cleared at
 * once, so that a reload does not open it again over what was changed since.
 */
export function openLinks(files: { openLink(fragment: string): Promise<unknown> }): void {
  const look = () => {
    const { hash, pathname, search } = window.location;
    if (!carriesAircraft(hash)) return;
    window.history.replaceState(null, '', pathname + search);
    void files.openLink(hash);
  };
  window.addEventListener('hashchange', look);
  look();
}
