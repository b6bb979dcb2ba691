/** What the rules say of the wiring, worst first. */
import { useMemo, useState } from 'react';
import { type Resting, sayAbout, sayNeeds } from '../../../engine/circuit/whole/index.ts';
import type { Figure, ReadWiring, Verdict, WiringFinding } from '../../../engine/circuit/wiring/index.ts';
import { formatQuantity } from '../../../engine/quantity/index.ts';
import { andList } from '../../../engine/quantity/words.ts';
import { Counts, VerdictWord } from '../../parts/verdict.tsx';
import { Pager, usePages } from './pager.tsx';

interface Props {
  readonly findings: readonly WiringFinding[];
  readonly read: ReadWiring;
  readonly resting: Resting | undefined;
  /** Shows a terminal, wire or device where it is. */
  readonly show: (id: string) => void;
}

const ASKED: readonly Verdict[] = ['fails', 'unknown', 'tight'];
const PAGE = 12;

export function Findings({ findings, read, resting, show }: Props) {
  const [wanted, setWanted] = useState<Verdict | 'open'>('open');
  const counts = useMemo(() => {
    const all = { fits: 0, tight: 0, fails: 0, unknown: 0 };
    for (const { verdict } of findings) all[verdict]++;
    return all;
  }, [findings]);
  const shown = useMemo(
    () =>
      findings.filter(({ verdict }) => (wanted === 'open' ? ASKED.includes(verdict) : verdict === wanted)),
    [findings, wanted],
  );
  const pages = usePages(shown, PAGE, wanted);
  return (
    <section aria-labelledby="wiring-findings" className="stack">
      <h2 id="wiring-findings">What is right and wrong with it</h2>
      <Counts counts={counts} />
      <label className="wiring-filter">
        Show
        <select value={wanted} onChange={(event) => setWanted(event.target.value as Verdict | 'open')}>
          <option value="open">what is not fine</option>
          <option value="fails">what fails</option>
          <option value="unknown">what is not known</option>
          <option value="tight">what is tight</option>
          <option value="fits">what fits</option>
        </select>
      </label>
      {shown.length === 0 && (
        <p>{findings.length === 0 ? 'Nothing is wired yet, so nothing is asked.' : 'Nothing here.'}</p>
      )}
      <ul className="wiring-findings">
        {pages.shown.map((finding) => (
          <FindingCard
            key={finding.id}
            finding={finding}
            rests={resting?.get(finding.id)}
            read={read}
            show={show}
          />
        ))}
      </ul>
      <Pager pages={pages} of="answers" />
    </section>
  );
}

interface CardProps {
  readonly finding: WiringFinding;
  /** Usual values that it rests on, in words. */
  readonly rests?: readonly string[] | undefined;
  /** Where what it is about is, and how to go there. */
  readonly read?: ReadWiring;
  readonly show?: (id: string) => void;
}

export function FindingCard({ finding, rests, read, show }: CardProps) {
  const { id, verdict, title, sentence, remedy, about, figures, source, needs } = finding;
  return (
    <li className="sheet" data-finding={id}>
      <VerdictWord verdict={verdict} /> <strong>{title}</strong>
      <p>{sentence}</p>
      {rests && <p className="small">It rests on {andList(rests)}; nobody has looked at that yet.</p>}
      {remedy && (
        <p>
          <strong>What would make it right:</strong> {remedy}
        </p>
      )}
      {needs && needs.length > 0 && <p className="small">Waits for: {sayNeeds(needs, read)}.</p>}
      {figures.length > 0 && <p className="small">{figures.map(sayFigure).join('; ')}.</p>}
      <p className="small soft">{source}</p>
      {show && read && (
        <p className="row">
          {about
            .filter((each) => sayAbout(read, each) !== undefined)
            .slice(0, 4)
            .map((each) => (
              <button key={each} type="button" className="plain" onClick={() => show(each)}>
                <span className="hidden">Show </span>
                {sayAbout(read, each)}
              </button>
            ))}
        </p>
      )}
    </li>
  );
}

const sayFigure = ({ name, value, unit }: Figure): string =>
  `${name} ${formatQuantity(value, unit, { digits: 4 })}`;
