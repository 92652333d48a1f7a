import { Component, type ReactNode } from 'react';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { FaultWays } from './FaultWays';
import { Trouble } from './Trouble';

interface BoundaryProps {
  /** What stands inside, as a sentence begins with it: "The beam". */
  readonly place: string;
  readonly children: ReactNode;
  readonly floating?: boolean;
}

/**
 * Round one place of the bench: what fails inside takes only this place, which says so with the ways on. It tries again
 * by itself with another aircraft, for the fault may have been that one's.
 */
export function Boundary(props: BoundaryProps) {
  return <Catching bench={useBench()} {...props} />;
}

interface CatchingState {
  readonly error: unknown;
  readonly failed: boolean;
}

const WELL: CatchingState = { error: null, failed: false };

class Catching extends Component<BoundaryProps & { readonly bench: Bench }, CatchingState> {
  override state = WELL;
  #off = () => {};
  /** What was on the bench when it failed. */
  #failedOn: unknown = null;

  static getDerivedStateFromError = (error: unknown): CatchingState => ({ error, failed: true });

  override componentDidCatch() {
    this.#failedOn = this.props.bench.document.current();
  }

  override componentDidMount() {
    const { document } = this.props.bench;
    this.#off = document.subscribe(() => {
      if (this.state.failed && document.current() !== this.#failedOn) this.retry();
    });
  }

  override componentWillUnmount() {
    this.#off();
  }

  retry = () => this.setState(WELL);

  override render() {
    const { place, children, floating, bench } = this.props;
    const { error, failed } = this.state;
    if (!failed) return children;
    return (
      <Trouble
        title={`${place} failed.`}
        detail={faultDetail(bench.document.current().name, error)}
        floating={floating ?? false}
      >
        <FaultWays onRetry={this.retry} />
      </Trouble>
    );
  }
}

/** On what it failed, why, and that the rest works. */
export function faultDetail(aircraftName: string, error: unknown): string {
  const reason = (error instanceof Error ? error.message : String(error)).trim().replace(/\.$/, '');
  return `With ${aircraftName || 'this aircraft'} on the bench: ${reason || 'no reason was given'}. Nothing is lost, and the other places work on.`;
}
