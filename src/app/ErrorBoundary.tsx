import { Component, type ReactNode } from 'react';
import { words } from '../words/index.ts';
import './crash.css';

interface Props {
  children: ReactNode;
  /** Hands the plan to the browser as a file. */
  onSave: () => void;
  /** Puts an empty plan on the desk: the way out when it is the open plan that the page fails on. */
  onEmpty: () => void;
}

interface State {
  error: Error | null;
}

/** Stands in for a page that failed. The plan lives outside it and is untouched. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { error: null };

  static getDerivedStateFromError(error: unknown): State {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (error === null) return this.props.children;
    const { crash } = words;
    return (
      <Crash title={crash.title} text={crash.kept} error={error}>
        <button type="button" onClick={this.props.onSave}>
          {crash.save}
        </button>
        <ReloadButton />
        <button
          type="button"
          onClick={() => {
            this.props.onEmpty();
            this.setState({ error: null });
          }}
        >
          {crash.empty}
        </button>
      </Crash>
    );
  }
}

/** What stands on the page when it could not even start. */
export function StartFailed({ error }: { error: Error }) {
  const { crash } = words;
  return (
    <Crash title={crash.title} text={crash.lost} error={error}>
      <ReloadButton />
    </Crash>
  );
}

function ReloadButton() {
  return (
    <button type="button" onClick={() => window.location.reload()}>
      {words.crash.reload}
    </button>
  );
}

function Crash(props: { title: string; text: string; error: Error; children: ReactNode }) {
  return (
    <main className="crash" role="alert">
      <h1>{props.title}</h1>
      <p>{props.text}</p>
      <div className="crash-acts">{props.children}</div>
      <details>
        <summary>{words.crash.what}</summary>
        <pre>{props.error.message}</pre>
      </details>
    </main>
  );
}
