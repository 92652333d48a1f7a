import { Component, type ReactNode } from 'react';

interface SceneBoundaryProps {
  readonly onError: (error: unknown) => void;
  readonly children: ReactNode;
}

/** Inside the canvas, where nothing can be said: takes the picture away and hands the error out. */
export class SceneBoundary extends Component<SceneBoundaryProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError = () => ({ failed: true });

  override componentDidCatch(error: unknown) {
    this.props.onError(error);
  }

  override render() {
    return this.state.failed ? null : this.props.children;
  }
}
