import { useSyncExternalStore } from 'react';
import { useBench } from '../store/react';

/** What the person should know about the bench itself. */
export function Notice() {
  const { notice } = useBench();
  const text = useSyncExternalStore(notice.subscribe, () => notice.getState().text);
  return (
    <span role="status" className="notice">
      {text}{' '}
    </span>
  );
}
