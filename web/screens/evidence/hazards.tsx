/** What can hurt, before anything else; the fields open once it was read. */
import { useRef } from 'react';
import type { BenchSheet } from '../../worker/bench-protocol.ts';

interface HazardsProps {
  readonly sheet: BenchSheet;
  readonly isRead: boolean;
  readonly onRead: () => void;
}

export function Hazards({ sheet, isRead, onRead }: HazardsProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  return (
    <section className="caution bench-hazards" aria-labelledby="bench-hazards">
      <h2 id="bench-hazards" tabIndex={-1} ref={heading}>
        Before you begin
      </h2>
      <ul>
        {sheet.hazards.map((hazard) => (
          <li key={hazard}>{hazard}</li>
        ))}
      </ul>
      {!isRead && (
        <>
          <p className="small">
            Local rules and licensed trades go before anything written here. If you are not sure, do not do
            it.
          </p>
          <button
            type="button"
            className="main"
            onClick={() => {
              // The button is gone once it was pressed; the cursor stays with the cautions.
              heading.current?.focus();
              onRead();
            }}
          >
            I have read this, go on
          </button>
        </>
      )}
    </section>
  );
}
