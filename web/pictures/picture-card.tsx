/** A picture with its question, its answer, the drawing, and the table that says the same. */
import { useId, useMemo, useState } from 'react';
import type { Mark as ChartMark, ChartPicture, Picture } from '../../engine/assess/pictures/index.ts';
import { Mark, WORD } from '../parts/verdict.tsx';
import { Chart } from './chart.tsx';
import { Flow } from './flow.tsx';
import { Numbers } from './numbers.tsx';
import { Reader, sayReading } from './reader.tsx';
import { frameOf } from './scales.ts';
import { useWidth } from './use-width.ts';
import { amount } from './words.ts';
import './pictures.css';

interface Props {
  readonly picture: Picture;
  readonly onSelectFinding: (id: string) => void;
}

export function PictureCard({ picture, onSelectFinding }: Props) {
  const id = useId();
  const drawn = picture.kind === 'flow' || picture.series.length > 0;
  return (
    <article className={`sheet picture ${picture.kind}`} aria-labelledby={id}>
      <h3 id={id}>
        <Mark verdict={picture.verdict} /> {picture.question}
        <span className="hidden"> {WORD[picture.verdict]}</span>
      </h3>
      <p>{picture.says}</p>
      {picture.kind === 'flow' && <Flow picture={picture} onSelectFinding={onSelectFinding} />}
      {picture.kind === 'chart' && drawn && <Drawing picture={picture} onSelectFinding={onSelectFinding} />}
      {!drawn && picture.findings[0] && (
        <button type="button" onClick={() => onSelectFinding(picture.findings[0]!)}>
          Show what is missing
        </button>
      )}
      {picture.note && drawn && <p className="small soft note">{picture.note}</p>}
      {picture.kind === 'chart' && drawn && <Numbers picture={picture} />}
    </article>
  );
}

interface DrawingProps {
  readonly picture: ChartPicture;
  readonly onSelectFinding: (id: string) => void;
}

function Drawing({ picture, onSelectFinding }: DrawingProps) {
  const [holder, width] = useWidth<HTMLDivElement>();
  const [reading, setReading] = useState<number>();
  const frame = useMemo(() => (width > 0 ? frameOf(picture, width) : undefined), [picture, width]);
  return (
    <>
      <div className="holder" ref={holder}>
        {frame && (
          <>
            <Chart picture={picture} width={width} reading={reading} />
            <Reader picture={picture} frame={frame} reading={reading} onRead={setReading} />
          </>
        )}
      </div>
      <p className="small soft readout" aria-hidden="true">
        {reading === undefined ? 'Point at the drawing to read the lines.' : sayReading(picture, reading)}
      </p>
      <ul className="marks">
        {picture.marks.map((mark) => (
          <li key={mark.name}>
            <MarkRow mark={mark} picture={picture} onSelectFinding={onSelectFinding} />
          </li>
        ))}
      </ul>
    </>
  );
}

interface MarkRowProps extends DrawingProps {
  readonly mark: ChartMark;
}

/** A mark in words; it leads to its finding where one judges it. */
function MarkRow({ mark, picture, onSelectFinding }: MarkRowProps) {
  const { finding, verdict } = mark;
  const where = picture.x.name.startsWith('nut') ? '' : ` at ${amount(mark.x, picture.x.unit)}`;
  const words = `${mark.name}: ${amount(mark.y, picture.y.unit)}${where}`;
  if (finding === undefined)
    return (
      <span className={verdict ? 'mark-row judged' : 'mark-row'}>
        {verdict && <Mark verdict={verdict} />} <span>{words}</span>{' '}
        {verdict && <span className="hidden">{WORD[verdict]}</span>}
      </span>
    );
  if (verdict === undefined) return <span className="mark-row">{words}</span>;
  return (
    <button type="button" className="plain mark-row" onClick={() => onSelectFinding(finding)}>
      <Mark verdict={verdict} /> <span>{words}</span> <span className="hidden">{WORD[verdict]}</span>
    </button>
  );
}
