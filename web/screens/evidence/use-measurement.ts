/** One measurement as it is typed, worked out and recorded. */
import { useMemo, useState } from 'react';
import { recording, useWorked } from '../../state/bench.ts';
import type { Session, View } from '../../state/session.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';
import { type Moved, movedBetween } from './changed.tsx';
import { keepBenchDraft, readBenchDraft } from './drafts.ts';
import { type Draft, draftOf, filled, noteOf, takenOf } from './rows.ts';
import { tidyFor } from './say.ts';
import { pasteInto } from './table-text.ts';

export interface Done {
  readonly again: boolean;
  readonly paths: readonly string[];
  readonly questions: readonly string[];
  readonly moved: readonly Moved[];
  readonly nearer: number;
}

/** A fresh sheet: what usually holds stands in its fields already, and what the address says. */
function fresh({ given }: BenchSheet, wanted: string): Draft {
  const place = wanted.split('.').at(-1)?.split('@')[0] ?? '';
  const texts = given.flatMap((entry): [string, string][] => {
    if (entry.usual !== undefined) return [[entry.key, entry.usual]];
    const isSaid = entry.kind === 'choice' && Object.hasOwn(entry.options, place);
    return isSaid ? [[entry.key, place]] : [];
  });
  return { given: Object.fromEntries(texts), rows: [], note: '', photos: [] };
}

interface Asked {
  readonly session: Session;
  readonly view: View;
  readonly sheet: BenchSheet;
  readonly wanted: string;
  /** What it is measured on; '' while that is not said. */
  readonly subject: string;
  /** Id of a recorded measurement that is opened again. */
  readonly open: string | undefined;
}

export function useMeasurement({ session, view, sheet, wanted, subject, open }: Asked) {
  const opened = open === undefined ? undefined : view.refit.evidence[open];
  const draftKey = (of: string): string => `${session.id}:${sheet.id}:${of}`;
  const key = draftKey(open ?? subject);
  const start = (): Draft => (opened ? draftOf(opened) : fresh(sheet, wanted));

  const [draft, setDraft] = useState<Draft>(() => readBenchDraft(key) ?? start());
  const [isRead, setIsRead] = useState(opened !== undefined || readBenchDraft(key) !== undefined);
  const [isKept, setIsKept] = useState(true);
  const [typing, setTyping] = useState<number>();
  const [said, setSaid] = useState<readonly string[]>([]);
  const [recordedId, setRecordedId] = useState(opened?.id);
  const [done, setDone] = useState<Done>();
  const [refused, setRefused] = useState('');
  /** What looks like a slip in what was to be recorded. */
  const [asked, setAsked] = useState('');
  const [isBusy, setIsBusy] = useState(false);
  const [cleared, setCleared] = useState<Draft>();

  const { columns } = sheet;
  const { taken, unfinished } = useMemo(() => takenOf(columns, draft, typing), [columns, draft, typing]);
  const { worked, slow } = useWorked(session, sheet.id, taken);
  const tidy = useMemo(() => tidyFor(sheet), [sheet]);
  const isTouched = JSON.stringify(draft) !== JSON.stringify(start());

  const change = (next: Draft): void => {
    setDraft(next);
    setDone(undefined);
    setRefused('');
    setAsked('');
    setIsKept(keepBenchDraft(key, next));
  };

  const put = (text: string, rows: Draft['rows'], at: { readonly row: number; readonly column: number }) => {
    const pasted = pasteInto(columns, rows, text, at);
    if (!pasted.ok) {
      setSaid([`${pasted.problem.message} Nothing was changed.`]);
      return;
    }
    setSaid(pasted.value.notes);
    setTyping(undefined);
    change({ ...draft, rows: pasted.value.rows });
  };
  const paste = (text: string, at: { readonly row: number; readonly column: number }): void =>
    put(text, draft.rows, at);
  /** A file takes the place of all rows; what stood there can be brought back. */
  const bringIn = (text: string): void => {
    if (filled(draft.rows).length > 0) setCleared(draft);
    put(text, [], { row: 0, column: 0 });
  };

  const startAnew = (): void => {
    if (done === undefined) setCleared(draft);
    keepBenchDraft(key, undefined);
    setDraft(start());
    setDone(undefined);
    setSaid([]);
    setRefused('');
    setAsked('');
    setRecordedId(opened?.id);
  };

  const bringBack = (): void => {
    if (cleared) change(cleared);
    setCleared(undefined);
  };

  /** What was typed goes along to another axis or part, unless something was typed for that one already. */
  const moveDraft = (to: string): void => {
    if (readBenchDraft(draftKey(to)) === undefined && isTouched) keepBenchDraft(draftKey(to), draft);
    keepBenchDraft(key, undefined);
  };

  /** `anyway`: the person has said that what looks like a slip is right. */
  const record = async (anyway = false): Promise<void> => {
    setIsBusy(true);
    setRefused('');
    setAsked('');
    try {
      const again = recordedId !== undefined && view.refit.evidence[recordedId] ? recordedId : undefined;
      const got = await recording(session, sheet.id, {
        ...takenOf(columns, draft).taken,
        where: subject,
        note: noteOf(draft),
        when: new Date().toISOString(),
        photos: draft.photos,
        ...(again === undefined ? {} : { again }),
      });
      if (!got.recording) {
        setRefused(tidy(got.problem?.message ?? 'It could not be recorded.'));
        return;
      }
      if (!anyway && got.recording.askBack.length > 0) {
        setAsked(got.recording.askBack.join(' '));
        return;
      }
      const before = view.recorded.findings;
      const isRecorded = await session.record(got.recording.changes);
      const state = session.get();
      if (!isRecorded || state.state !== 'open') {
        setRefused(state.state === 'open' ? state.view.message : 'It could not be recorded.');
        return;
      }
      const after = state.view.recorded.findings;
      const waits = new Map(before.map(({ id, missing }) => [id, missing.length]));
      keepBenchDraft(key, undefined);
      setCleared(undefined);
      setRecordedId(got.recording.id);
      setDone({
        again: again !== undefined,
        paths: got.recording.paths,
        questions: got.recording.questions,
        moved: movedBetween(before, after),
        nearer: after.filter(
          ({ id, verdict, missing }) => verdict === 'unknown' && missing.length < (waits.get(id) ?? 0),
        ).length,
      });
    } catch (fault) {
      setRefused(fault instanceof Error ? fault.message : String(fault));
    } finally {
      setIsBusy(false);
    }
  };

  return {
    opened,
    draft,
    isRead,
    isKept,
    isTouched,
    isBusy,
    isAgain: recordedId !== undefined,
    said,
    done,
    refused,
    asked,
    cleared,
    unfinished,
    worked,
    slow,
    tidy,
    goOn: () => setIsRead(true),
    say: setSaid,
    setTyping,
    change,
    paste,
    bringIn,
    startAnew,
    bringBack,
    moveDraft,
    record,
  };
}

export type Measurement = ReturnType<typeof useMeasurement>;
