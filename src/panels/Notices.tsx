import { useEffect, useSyncExternalStore } from 'react';
import type { Notice } from '../store/noticeStore';
import { useBench } from '../store/react';
import { Icon } from './icons';

/** How long what went well stands there, ms. */
const DONE_MS = 6000;

/** What the person should know about the bench itself, each with what can be done about it. */
export function Notices() {
  const { notice } = useBench();
  const notices = useSyncExternalStore(notice.api.subscribe, () => notice.api.getState().notices);
  return (
    <div className="notices" aria-label="Notices" role="status" data-testid="notices">
      {notices.map((said) => (
        <Said key={said.about} said={said} onClose={() => notice.drop(said.about)} />
      ))}
    </div>
  );
}

function Said({ said, onClose }: { readonly said: Notice; readonly onClose: () => void }) {
  const { notice } = useBench();
  useEffect(() => {
    if (said.tone !== 'done') return;
    const timer = setTimeout(() => notice.drop(said.about), DONE_MS);
    return () => clearTimeout(timer);
  }, [said, notice]);
  return (
    <div className="notice" data-tone={said.tone} data-about={said.about}>
      <p>{said.text}</p>
      <button type="button" className="button bare" aria-label="Close this notice" onClick={onClose}>
        <Icon name="cross" />
      </button>
      {said.actions && (
        <div className="trouble-ways">
          {said.actions.map(({ label, run }) => (
            <button key={label} type="button" className="button" onClick={run}>
              {label}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}
