/** The diagrams: one circuit after another, drawn when they are asked for and again when the wiring changed. */
import { useEffect, useMemo, useState } from 'react';
import { legend, marksOf, type Sheet, sheetTitle } from '../../../engine/circuit/drawing/index.ts';
import { drawNode } from './draw-node.tsx';
import type { WiringView } from './use-wiring.ts';
import { Viewer } from './viewer.tsx';

interface Props {
  readonly wiring: WiringView;
  readonly pinned: ReadonlySet<string>;
  readonly picked: string | undefined;
  readonly seek: string | undefined;
  readonly pick: (terminal: string) => void;
}

const NONE: readonly Sheet[] = [];
const keyOf = ({ circuit, number }: Sheet): string => `${circuit} ${number}`;

export function Diagrams({ wiring, pinned, picked, seek, pick }: Props) {
  const { looked, stamp, drawing } = wiring;
  const { drawn, draw, cancel, progress } = drawing;
  const [chosen, setChosen] = useState('');
  useEffect(() => {
    if (stamp > 0) draw();
  }, [stamp, draw]);
  const marks = useMemo(() => marksOf(looked?.findings ?? []), [looked]);
  const sheets = drawn?.sheets ?? NONE;
  const sought = useMemo(
    () =>
      seek === undefined
        ? undefined
        : sheets.find(({ clusters }) =>
            clusters.some(
              ({ laid }) =>
                laid.pieces.some(({ ports }) => ports.some(({ terminal }) => terminal === seek)) ||
                laid.flags.some(({ flag }) => flag.lines.some(({ joint }) => joint === seek)),
            ),
          ),
    [sheets, seek],
  );
  useEffect(() => {
    if (sought) setChosen(keyOf(sought));
  }, [sought]);
  const sheet = sheets.find((each) => keyOf(each) === chosen) ?? sheets[0];
  return (
    <section className="stack" aria-labelledby="wiring-diagrams">
      <h2 id="wiring-diagrams">Diagrams</h2>
      <div className="row" role="status">
        {progress && progress.all > 0 && (
          <>
            <progress max={progress.all} value={progress.done} aria-label="How far the drawing is" />
            <span className="small">
              {progress.done} of {progress.all} groups
            </span>
          </>
        )}
        {progress && progress.all === 0 && <span className="small">Drawing …</span>}
        {progress && (
          <button type="button" onClick={cancel}>
            Stop drawing
          </button>
        )}
        {!progress && drawn && drawn.done < drawn.of && (
          <>
            <span className="small">
              Stopped: {drawn.done} of {drawn.of} groups are drawn and kept.
            </span>
            <button type="button" onClick={draw}>
              Go on drawing
            </button>
          </>
        )}
      </div>
      {drawn?.of === 0 && <p>There is no wire yet, so there is nothing to draw.</p>}
      {sheet && (
        <>
          <label className="wiring-choice">
            Diagram
            <select
              aria-label="Diagram"
              value={keyOf(sheet)}
              onChange={(event) => setChosen(event.target.value)}
            >
              {sheets.map((each) => (
                <option key={keyOf(each)} value={keyOf(each)}>
                  {sheetTitle(each)}
                </option>
              ))}
            </select>
          </label>
          <Viewer
            sheet={sheet}
            marks={marks}
            pinned={pinned}
            picked={picked}
            seek={sought === sheet ? seek : undefined}
            pick={pick}
          />
          <p className="small">
            Click a terminal, or press Enter on it, to see what fits it; a second one, to join the two. With
            Ctrl held the wheel changes the size.
          </p>
        </>
      )}
      <p className="small soft">
        Drawn from the wiring as it stands. What is common to many (plus, 0 V, earth) is not a web of lines:
        each terminal says where its wires go, and a small circle is a terminal of a strip. Crosses, question
        marks and exclamation marks point out answers that are not fine; below it is said what each symbol and
        mark means.
      </p>
      {drawn && drawn.symbols.length > 0 && (
        <details>
          <summary>What the symbols mean</summary>
          <div className="scroll wiring-legend">{drawNode(legend(drawn.symbols, 2))}</div>
        </details>
      )}
    </section>
  );
}
