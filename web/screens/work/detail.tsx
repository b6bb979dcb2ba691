/** One piece of work: its fields, what each link says, the first that gives way, the ways round, and its pictures. */
import { useEffect, useId, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { Work } from '../../../engine/refit/types.ts';
import {
  FOLLOWING_DRAWS,
  fieldsOf,
  type JudgedWork,
  LINKS,
  oddFields,
  sayChance,
  sayNeeds,
  sayRange,
  sayShare,
  WORK_KINDS,
  type WorkFinding,
} from '../../../engine/work/index.ts';
import { MarginRule, sayMargin } from '../../parts/margin-rule.tsx';
import { Mark, VerdictWord } from '../../parts/verdict.tsx';
import type { Session } from '../../state/session.ts';
import { CutDetails } from './cut-detail.tsx';
import { WorkInput } from './input.tsx';
import { MilledDetails } from './milled-detail.tsx';
import { TapDetails } from './tap-detail.tsx';
import { ThreadDetails } from './thread-detail.tsx';
import type { WorkView } from './use-work.ts';

interface Props {
  /** As the refit has it now; what is judged may be of a moment before. */
  readonly work: Work;
  readonly judged: JudgedWork;
  readonly state: WorkView;
  readonly record: (old: Work | null, next: Work | null) => void;
  readonly session: Session;
}

export function WorkDetail({ work, judged, state, record, session }: Props) {
  const { verdict, findings, ways, detail, summary, draws } = judged;
  return (
    <div className="stack">
      <div className="row spread">
        <h2 id="work-detail-name" tabIndex={-1}>
          {work.name || work.id}
        </h2>
        <VerdictWord verdict={verdict} />
      </div>
      <p>{summary}</p>
      <Fields work={work} findings={findings} record={record} />
      <div>
        <h3>Link by link</h3>
        {draws && (
          <p className="small soft">
            Drawn {draws.lanes} times with every doubtful fact as it may be: {sayShare(draws.chance)}. The
            thin line on a rule is where its margin lies in 95 of 100 draws. How an axis follows is drawn from{' '}
            {FOLLOWING_DRAWS} axes moved in the simulation.
          </p>
        )}
        <ul className="work-findings">
          {findings
            .filter(({ check }) => !check.startsWith('setting-'))
            .map((finding) => (
              <li key={finding.id}>
                <One finding={finding} home={`/refit/${session.id}`} />
              </li>
            ))}
        </ul>
      </div>
      {ways.length > 0 && (
        <div>
          <h3>Ways round</h3>
          <ul className="ways">
            {ways.map((way) => (
              <li key={way.name} className="sheet">
                <h4>{way.name}</h4>
                <p>{way.how}</p>
                <p className="small soft">
                  <strong>Where it ends:</strong> {way.limits}
                </p>
              </li>
            ))}
          </ul>
          <p className="small soft">{ways[0]!.source}.</p>
        </div>
      )}
      {detail?.kind === 'cut' && <CutDetails detail={detail} />}
      {detail?.kind === 'thread' && <ThreadDetails work={work} detail={detail} state={state} />}
      {detail?.kind === 'milled' && <MilledDetails detail={detail} />}
      {detail?.kind === 'tap' && <TapDetails work={work} detail={detail} state={state} />}
      <button type="button" onClick={() => record(work, null)}>
        Take this {work.kind} off the list
      </button>
    </div>
  );
}

function Fields({
  work,
  findings,
  record,
}: Pick<Props, 'record'> & { readonly work: Work; readonly findings: readonly WorkFinding[] }) {
  const id = useId();
  const [typed, setTyped] = useState(work.settings);
  // What is recorded takes the place of what is typed, but not of what waits for an answer.
  const stood = useRef(work.settings);
  useEffect(() => {
    const old = stood.current;
    stood.current = work.settings;
    setTyped((before) => {
      const waits = oddFields(work.kind, before).filter(
        ({ key, isFar }) => isFar && before[key] !== old[key],
      );
      return { ...work.settings, ...Object.fromEntries(waits.map(({ key }) => [key, before[key]!])) };
    });
  }, [work.kind, work.settings]);
  const faultOf = (key: string): string | undefined =>
    findings.find(({ check }) => check === `setting-${key}`)?.sentence;
  const fields = fieldsOf(work.kind, typed);
  const odd = oddFields(work.kind, typed);
  const strange = findings.filter(
    ({ check }) => check.startsWith('setting-') && !fields.some(({ key }) => check === `setting-${key}`),
  );
  const keep = (key: string, value: string): void => {
    const text = value.trim();
    if (text === (work.settings[key] ?? '')) return;
    const { [key]: _old, ...rest } = work.settings;
    record(work, { ...work, settings: text === '' ? rest : { ...rest, [key]: text } });
  };
  return (
    <details className="sheet" open={findings.some(({ link }) => link === 'settings')}>
      <summary>{WORK_KINDS[work.kind]}: what was asked</summary>
      {strange.map((finding) => (
        <p key={finding.id} className="bad">
          {finding.sentence}
        </p>
      ))}
      <div className="work-fields">
        {fields.map((field) => (
          <WorkInput
            key={field.key}
            id={`${id}-${field.key}`}
            field={field}
            value={typed[field.key] ?? ''}
            change={(value) => setTyped({ ...typed, [field.key]: value })}
            keep={(value) => keep(field.key, value)}
            fault={faultOf(field.key)}
            question={odd.find(({ key }) => key === field.key)?.sentence}
            askBack={(value) =>
              value.trim() === (work.settings[field.key] ?? '')
                ? undefined
                : oddFields(work.kind, { ...typed, [field.key]: value }).find(
                    ({ key, isFar }) => isFar && key === field.key,
                  )?.sentence
            }
          />
        ))}
      </div>
    </details>
  );
}

function One({ finding, home }: { readonly finding: WorkFinding; readonly home: string }) {
  const { verdict, title, link, sentence, because, needs, margin, marginRange, basis } = finding;
  const chance = sayChance(finding);
  return (
    <details className="work-finding" open={verdict === 'fails'}>
      <summary>
        <Mark verdict={verdict} />
        <span>
          <strong>{title}</strong>
          <span className="hidden">: {verdict}</span> <span className="small soft">{LINKS[link]}</span>
          <br />
          <span className="small said">
            {sentence}
            {chance && ` ${chance}`}
          </span>
        </span>
        {margin !== undefined && <MarginRule margin={margin} range={marginRange} verdict={verdict} />}
        {margin !== undefined && <span className={`margin verdict ${verdict}`}>{sayMargin(finding)}</span>}
      </summary>
      {marginRange && (
        <p className="small">In 95 of 100 draws its margin lies from {sayRange(marginRange)}.</p>
      )}
      {because.length > 0 && (
        <ul className="small">
          {because.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
      {needs.length > 0 && (
        <p className="small">
          Not known: {sayNeeds(needs).join('; ')}. <Link href={hrefOf(home, needs[0]!)}>Fill it in</Link>
        </p>
      )}
      {basis && <p className="small soft">Rests on: {basis}.</p>}
      {because.length === 0 && needs.length === 0 && !basis && (
        <p className="small soft">It follows from the choice alone.</p>
      )}
    </details>
  );
}

/** Where a fact is filled in: on the page of its chain, or of the machine. */
function hrefOf(home: string, path: string): string {
  const [first = '', ...rest] = path.split('.');
  if (first === 'control') return `${home}/control`;
  return rest.length > 1 || /^[A-Z]/.test(first) ? `${home}/fit/${first}` : `${home}/fit/machine`;
}
