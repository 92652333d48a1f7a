import { useState } from 'react';
import { Trouble } from './Trouble';

interface NotFetchedProps {
  /** What it is, as a sentence begins with it. */
  readonly place: string;
  readonly onRetry: () => void;
  /** Given where it would have been a dialog. */
  readonly onClose?: (() => void) | undefined;
}

/** In the place of a piece of the page that did not come. */
export function NotFetched({ place, onRetry, onClose }: NotFetchedProps) {
  const [silent, setSilent] = useState(false);
  // A page that is loaded again from a server that has stopped would be gone.
  const reload = async () => {
    const there = await fetch(location.href, { method: 'HEAD', cache: 'no-store' }).catch(() => null);
    if (there?.ok) location.reload();
    else setSilent(true);
  };
  return (
    <Trouble
      title={`${place} could not be fetched.`}
      detail={
        silent
          ? 'The server does not answer, so the page stays as it is. The aircraft is safe; try again when the server runs.'
          : 'The server has stopped or was out of reach, or the bench was renewed since this page was opened. The aircraft is safe, and what is here works on.'
      }
      floating={onClose !== undefined}
    >
      <button
        type="button"
        className="button"
        onClick={() => {
          freshenStyles();
          onRetry();
        }}
      >
        Retry
      </button>
      <button type="button" className="button" onClick={() => void reload()}>
        Reload the page
      </button>
      {onClose && (
        <button type="button" className="button" onClick={onClose}>
          Close
        </button>
      )}
    </Trouble>
  );
}

/** The style sheets that did not come. */
const missingStyles = new Set<HTMLLinkElement>();

window.addEventListener(
  'error',
  ({ target }) => {
    if (target instanceof HTMLLinkElement && target.rel === 'stylesheet') missingStyles.add(target);
  },
  // An element's error does not bubble.
  { capture: true },
);

/** A style sheet that did not come is never asked for again by itself: its link is put in again. */
function freshenStyles(): void {
  for (const link of missingStyles) link.replaceWith(link.cloneNode());
  missingStyles.clear();
}
