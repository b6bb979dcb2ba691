/** How a bench test is made: tools, the set-up drawn, and the steps. */
import type { BenchSheet } from '../../worker/bench-protocol.ts';
import { SetUp } from './set-up.tsx';

export function HowTo({ sheet }: { sheet: BenchSheet }) {
  return (
    <details className="sheet bench-how" open>
      <summary>
        <h2>How it is done</h2>
      </summary>
      <SetUp drawing={sheet.drawing} />
      <h3>You need</h3>
      <ul>
        {sheet.tools.map((tool) => (
          <li key={tool}>{tool}</li>
        ))}
      </ul>
      <h3>Steps</h3>
      <ol>
        {sheet.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </details>
  );
}
