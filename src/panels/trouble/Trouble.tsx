import './trouble.css';
import type { ReactNode } from 'react';
import { Icon } from '../icons';

interface TroubleProps {
  /** What does not work, in a sentence. */
  readonly title: string;
  /** On what, why, and what that means for the person's work. */
  readonly detail: string;
  /** The ways on, as buttons. */
  readonly children: ReactNode;
  /** In the middle of the window, for what would have been a dialog. */
  readonly floating?: boolean;
}

/** The one look of everything that does not work: what, why and the ways on, in its place. */
export function Trouble({ title, detail, children, floating = false }: TroubleProps) {
  return (
    <div className={floating ? 'trouble floating' : 'trouble'} role="alert" data-testid="trouble">
      <p className="trouble-title">
        <Icon name="bad" /> <span>{title}</span>
      </p>
      <p className="trouble-detail">{detail}</p>
      <div className="trouble-ways">{children}</div>
    </div>
  );
}
