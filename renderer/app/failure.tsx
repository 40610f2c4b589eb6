import { Button } from '@mantine/core';
import { Component, type ReactNode } from 'react';

interface FailureBoundaryProps {
  readonly children: ReactNode;
  /** When this changes, the page is tried again: another screen may well work. */
  readonly place: string;
}

/** Stands in for a screen that broke, and says plainly that the workbook itself is safe. */
export class FailureBoundary extends Component<FailureBoundaryProps, { readonly error: Error | null }> {
  override state: { readonly error: Error | null } = { error: null };

  static getDerivedStateFromError(error: unknown) {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override componentDidUpdate(before: FailureBoundaryProps) {
    if (before.place !== this.props.place && this.state.error !== null) this.setState({ error: null });
  }

  override render() {
    const { error } = this.state;
    if (error === null) return this.props.children;
    return (
      <div className="failure" role="alert">
        <h1>This page could not be drawn</h1>
        <p>
          Everything entered so far is in the workbook; only the drawing failed. Try the page again, or go to another
          one.
        </p>
        <p>
          <Button onClick={() => this.setState({ error: null })}>Try again</Button>{' '}
          <Button onClick={() => window.location.reload()}>Reload the window</Button>
        </p>
        <details>
          <summary>What went wrong</summary>
          <pre>{error.message}</pre>
        </details>
      </div>
    );
  }
}
