/** What going through every state found, worst first. */

import type { AuxiliaryFinding } from '../../../engine/control/index.ts';
import { byVerdict } from '../../../engine/quantity/verdict.ts';
import { VerdictWord } from '../../parts/verdict.tsx';

export function Findings({ findings }: { findings: readonly AuxiliaryFinding[] }) {
  const sorted = [...findings].sort(byVerdict);
  return (
    <ul className="control-findings">
      {sorted.map(({ id, verdict, title, sentence, faults, way, cure }) => (
        <li key={id} className="sheet" data-finding={id}>
          <p>
            <VerdictWord verdict={verdict} /> <strong>{title}</strong>
          </p>
          <p className="small">{sentence}</p>
          {cure && (
            <p className="small">
              <strong>What would do:</strong> {cure}
            </p>
          )}
          {(faults.length > 0 || way.length > 0) && (
            <details className="small">
              <summary>How it comes about</summary>
              {faults.length > 0 && (
                <>
                  <p>With any one of these:</p>
                  <ul>
                    {faults.map((each) => (
                      <li key={each}>{each}</li>
                    ))}
                  </ul>
                </>
              )}
              {way.length > 0 && (
                <>
                  <p>The shortest way{faults.length > 1 ? ', with the first of them' : ''}:</p>
                  <ol>
                    {way.map((each, n) => (
                      // biome-ignore lint/suspicious/noArrayIndexKey: the same act can come twice
                      <li key={n}>{each}</li>
                    ))}
                  </ol>
                </>
              )}
            </details>
          )}
        </li>
      ))}
    </ul>
  );
}
