/** One bench test: what can hurt first, then how, what is read, what it comes to, and recording it. */
import { type ChangeEvent, type RefObject, useEffect, useId, useMemo, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { LIMITS } from '../../../engine/refit/limits.ts';
import { recording, useWorked } from '../../state/bench.ts';
import type { Session, View } from '../../state/session.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';
import { Photos } from '../survey/photos.tsx';
import { Changed, type Moved, movedBetween } from './changed.tsx';
import { keepBenchDraft, readBenchDraft } from './drafts.ts';
import { Entries } from './entries.tsx';
import { subjectFor, subjectsOf } from './groups.ts';
import { HowTo } from './how-to.tsx';
import { Readings } from './readings.tsx';
import { ResultPanel, sayShort } from './result-panel.tsx';
import { type Draft, draftOf, filled, noteOf, takenOf } from './rows.ts';
import { faultsOf, sayDay, tidyFor } from './say.ts';
import { pasteInto, tableOf } from './table-text.ts';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly sheet: BenchSheet;
  /** As the address says: 'X.motor', or ''. */
  readonly wanted: string;
  /** Id of a recorded measurement that is opened again. */
  readonly open: string | undefined;
}

interface Done {
  readonly again: boolean;
  readonly paths: readonly string[];
  readonly questions: readonly string[];
  readonly moved: readonly Moved[];
  readonly nearer: number;
}

/** A fresh sheet: what usually holds stands in its fields already. */
function fresh({ given }: BenchSheet, wanted: string): Draft {
  const place = wanted.split('.').at(-1)?.split('@')[0] ?? '';
  const texts = given.flatMap((entry): [string, string][] => {
    if (entry.usual !== undefined) return [[entry.key, entry.usual]];
    const isSaid = entry.kind === 'choice' && Object.hasOwn(entry.options, place);
    return isSaid ? [[entry.key, place]] : [];
  });
  return { given: Object.fromEntries(texts), rows: [], note: '', photos: [] };
}

export function Measure({ session, view, sheet, wanted, open }: Props) {
  const home = `/refit/${session.id}`;
  const [, navigate] = useLocation();
  const subjects = subjectsOf(view.refit, sheet);
  const subject = subjectFor(subjects, wanted) ?? (subjects.length === 1 ? subjects[0]!.value : '');
  const opened = open === undefined ? undefined : view.refit.evidence[open];
  const key = `${session.id}:${sheet.id}:${open ?? subject}`;

  const [draft, setDraft] = useState<Draft>(
    () => readBenchDraft(key) ?? (opened ? draftOf(opened) : fresh(sheet, wanted)),
  );
  const [isRead, setIsRead] = useState(opened !== undefined || readBenchDraft(key) !== undefined);
  const [isKept, setIsKept] = useState(true);
  const [typing, setTyping] = useState<number>();
  const [said, setSaid] = useState<readonly string[]>([]);
  const [recordedId, setRecordedId] = useState(opened?.id);
  const [done, setDone] = useState<Done>();
  const [refused, setRefused] = useState('');
  const [isBusy, setIsBusy] = useState(false);
  const [cleared, setCleared] = useState<Draft>();

  const { columns } = sheet;
  const { taken, unfinished } = useMemo(() => takenOf(columns, draft, typing), [columns, draft, typing]);
  const { worked, slow } = useWorked(session, sheet.id, taken);
  const tidy = useMemo(() => tidyFor(sheet), [sheet]);
  const faults = faultsOf(sheet, worked?.problem);
  const isTouched = JSON.stringify(draft) !== JSON.stringify(fresh(sheet, wanted));

  const change = (next: Draft): void => {
    setDraft(next);
    setDone(undefined);
    setRefused('');
    setIsKept(keepBenchDraft(key, next));
  };
  const rows = (next: Draft['rows']): void => change({ ...draft, rows: next });

  const paste = (text: string, at: { row: number; column: number }): void => {
    const pasted = pasteInto(columns, draft.rows, text, at);
    if (!pasted.ok) {
      setSaid([`${pasted.problem.message} Nothing was changed.`]);
      return;
    }
    setSaid(pasted.value.notes);
    setTyping(undefined);
    rows(pasted.value.rows);
  };

  const startAnew = (): void => {
    if (done === undefined) setCleared(draft);
    keepBenchDraft(key, undefined);
    setDraft(opened ? draftOf(opened) : fresh(sheet, wanted));
    setDone(undefined);
    setSaid([]);
    setRefused('');
    setRecordedId(opened?.id);
  };

  const record = async (): Promise<void> => {
    setIsBusy(true);
    setRefused('');
    try {
      const whole = takenOf(columns, draft).taken;
      const got = await recording(session, sheet.id, {
        ...whole,
        where: subject,
        note: noteOf(draft),
        when: new Date().toISOString(),
        photos: draft.photos,
        ...(recordedId !== undefined && view.refit.evidence[recordedId] ? { again: recordedId } : {}),
      });
      if (!got.recording) {
        setRefused(tidy(got.problem?.message ?? 'It could not be recorded.'));
        return;
      }
      const before = view.recorded.findings;
      if (!(await session.record(got.recording.changes))) {
        const state = session.get();
        setRefused(state.state === 'open' ? state.view.message : 'It could not be recorded.');
        return;
      }
      const state = session.get();
      const after = state.state === 'open' ? state.view.recorded.findings : before;
      const waits = new Map(before.map(({ id, missing }) => [id, missing.length]));
      keepBenchDraft(key, undefined);
      setDone({
        again: recordedId !== undefined,
        paths: got.recording.paths,
        questions: got.recording.questions,
        moved: movedBetween(before, after),
        nearer: after.filter(
          ({ id, verdict, missing }) => verdict === 'unknown' && missing.length < (waits.get(id) ?? 0),
        ).length,
      });
      setRecordedId(got.recording.id);
    } finally {
      setIsBusy(false);
    }
  };

  const root = useRef<HTMLDivElement>(null);
  useFootHeight(root);
  return (
    <div className="bench stack" ref={root}>
      <div>
        <p className="small">
          <Link href={`${home}/evidence`}>All bench tests</Link>
        </p>
        <h1>{sheet.title}</h1>
        <p>{sheet.purpose}</p>
        {opened && (
          <p className="soft">
            Recorded on {sayDay(opened.when)}. Change what was wrong and record it anew; the history keeps
            what stood here.
          </p>
        )}
      </div>
      <Hazards sheet={sheet} isRead={isRead} onRead={() => setIsRead(true)} />
      <div className="columns two bench-work">
        <HowTo sheet={sheet} />
        {isRead ? (
          <div className="stack">
            {subjects.length > 0 && (
              <SubjectField
                subjects={subjects}
                subject={subject}
                onChoose={(value) => {
                  // What was typed goes along, unless something was typed for that one already.
                  const other = `${session.id}:${sheet.id}:${value}`;
                  if (readBenchDraft(other) === undefined && isTouched) keepBenchDraft(other, draft);
                  keepBenchDraft(key, undefined);
                  navigate(`${home}/evidence/${sheet.id}?for=${encodeURIComponent(value)}`, {
                    replace: true,
                  });
                }}
                isFixed={opened !== undefined}
              />
            )}
            <section className="sheet" aria-label="What is known of the set-up">
              <Entries
                entries={sheet.given}
                given={draft.given}
                faults={isTouched ? faults.entries : {}}
                onChange={(entry, text) => change({ ...draft, given: { ...draft.given, [entry]: text } })}
              />
            </section>
            {columns.length > 0 && (
              <section className="sheet" aria-labelledby="bench-readings">
                <div className="row spread">
                  <h2 id="bench-readings">Readings</h2>
                  <TableFile
                    name={`${session.id}-${sheet.id}.csv`}
                    isEmpty={filled(draft.rows).length === 0}
                    csv={() => tableOf(columns, draft.rows)}
                    onText={(text) => paste(text, { row: 0, column: 0 })}
                    onFault={(fault) => setSaid([fault])}
                  />
                </div>
                <p className="small soft">
                  {sheet.least > 1 && `At least ${sheet.least} rows. `}
                  Enter goes to the next cell. You can paste from a spreadsheet.
                </p>
                <Readings
                  columns={columns}
                  rows={draft.rows}
                  least={sheet.least}
                  questions={worked?.outcome?.questions ?? []}
                  faults={faults.rows}
                  unfinished={unfinished}
                  onRows={rows}
                  onTyping={setTyping}
                  onPaste={paste}
                />
                <div role="status">
                  {said.length > 0 && (
                    <ul className="small bench-said">
                      {said.map((each) => (
                        <li key={each}>{each}</li>
                      ))}
                    </ul>
                  )}
                </div>
                <p className="bench-now" role="status">
                  {slow ? 'Working it out …' : sayShort(worked, unfinished)}
                </p>
              </section>
            )}
          </div>
        ) : (
          <p className="soft">The fields open once you have read what can hurt.</p>
        )}
      </div>
      {isRead && (
        <>
          <ResultPanel
            sheet={sheet}
            worked={worked}
            slow={slow}
            faults={faults}
            rows={draft.rows}
            tidy={tidy}
            isTouched={isTouched}
          />
          <section className="sheet stack" aria-labelledby="bench-record">
            <h2 id="bench-record">Keep it</h2>
            <label>
              Note: which meter, who was there, what was odd
              <textarea
                value={draft.note}
                maxLength={LIMITS.text / 2}
                onChange={(event) => change({ ...draft, note: event.target.value })}
              />
            </label>
            <Photos
              refit={session.id}
              of={sheet.title}
              names={draft.photos}
              onChange={async (photos) => {
                change({ ...draft, photos });
                return true;
              }}
            />
            <div className="row">
              <button
                type="button"
                className="main"
                disabled={
                  isBusy || done !== undefined || !worked?.outcome || (subjects.length > 0 && subject === '')
                }
                onClick={() => void record()}
              >
                {recordedId === undefined ? 'Record it' : 'Record it anew'}
              </button>
              <button type="button" className="plain" onClick={startAnew}>
                {opened ? 'Back to what was recorded' : 'Clear and start anew'}
              </button>
              {cleared && (
                <button
                  type="button"
                  className="plain"
                  onClick={() => {
                    setCleared(undefined);
                    change(cleared);
                  }}
                >
                  Bring back what was cleared
                </button>
              )}
            </div>
            <p className="small soft" role="status">
              {sayWhy(Boolean(worked?.outcome), subjects.length > 0 && subject === '', isKept)}
            </p>
            {refused && (
              <p className="bad" role="alert">
                {refused}
              </p>
            )}
            <div aria-live="polite">{done && <Changed home={home} {...done} />}</div>
          </section>
        </>
      )}
    </div>
  );
}

/** The page's foot grows with what it says; the line with the newest value stays above it. */
function useFootHeight(root: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const foot = document.querySelector<HTMLElement>('footer.status');
    if (!foot) return;
    const observer = new ResizeObserver(() =>
      root.current?.style.setProperty('--foot', `${foot.offsetHeight + 2}px`),
    );
    observer.observe(foot);
    return () => observer.disconnect();
  }, [root]);
}

function sayWhy(hasOutcome: boolean, lacksSubject: boolean, isKept: boolean): string {
  if (!hasOutcome) return 'It can be recorded once there is a result.';
  if (lacksSubject) return 'Say above what it was measured on; then it can be recorded.';
  if (!isKept) return 'This is too large for the browser to keep over a reload: record it soon.';
  return 'What you type here is kept in this browser until it is recorded.';
}

interface HazardsProps {
  readonly sheet: BenchSheet;
  readonly isRead: boolean;
  readonly onRead: () => void;
}

function Hazards({ sheet, isRead, onRead }: HazardsProps) {
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

interface SubjectProps {
  readonly subjects: ReturnType<typeof subjectsOf>;
  readonly subject: string;
  readonly isFixed: boolean;
  readonly onChoose: (value: string) => void;
}

function SubjectField({ subjects, subject, isFixed, onChoose }: SubjectProps) {
  const id = useId();
  return (
    <div className="bench-subject">
      <label htmlFor={id}>Measured on</label>
      <select id={id} value={subject} disabled={isFixed} onChange={(event) => onChoose(event.target.value)}>
        {subject === '' && <option value="">choose which one</option>}
        {subjects.map(({ value, words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

interface TableFileProps {
  readonly name: string;
  readonly isEmpty: boolean;
  readonly csv: () => string;
  readonly onText: (text: string) => void;
  readonly onFault: (fault: string) => void;
}

/** Largest table that is read, in bytes. */
const LARGEST = 1_000_000;

function TableFile({ name, isEmpty, csv, onText, onFault }: TableFileProps) {
  const id = useId();
  const pick = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const file = event.target.files?.[0];
    if (!file) return;
    try {
      if (file.size > LARGEST)
        onFault(
          `This file has ${(file.size / 1e6).toFixed(1)} MB; a table of readings has at most 1 MB. Nothing was changed.`,
        );
      else onText(await file.text());
    } catch {
      onFault('This file could not be read. Nothing was changed.');
    }
    event.target.value = '';
  };
  return (
    <span className="row">
      <span className="bench-pick">
        <input id={id} type="file" accept=".csv,.tsv,.txt,text/csv,text/plain" onChange={pick} />
        <label htmlFor={id} className="button small">
          From a CSV file
        </label>
      </span>
      <button
        type="button"
        className="small"
        disabled={isEmpty}
        onClick={() => {
          const address = URL.createObjectURL(new Blob([csv()], { type: 'text/csv' }));
          const link = document.createElement('a');
          link.href = address;
          link.download = name;
          link.click();
          // The browser has taken it over by the next turn.
          setTimeout(() => URL.revokeObjectURL(address), 0);
        }}
      >
        As CSV
      </button>
    </span>
  );
}
