/** Recording a measurement: a note, photos, and what it changed. */
import { LIMITS } from '../../../engine/refit/limits.ts';
import { AskBack } from '../../parts/ask-back.tsx';
import type { Session } from '../../state/session.ts';
import { Photos } from '../survey/photos.tsx';
import { Changed } from './changed.tsx';
import type { Measurement } from './use-measurement.ts';

interface Props {
  readonly session: Session;
  readonly title: string;
  readonly measurement: Measurement;
  /** Whether it is not said yet which axis or part it was measured on. */
  readonly lacksSubject: boolean;
}

export function KeepIt({ session, title, measurement, lacksSubject }: Props) {
  const { draft, change, worked, done, refused, asked, cleared, opened } = measurement;
  const hasOutcome = worked?.outcome !== undefined;
  return (
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
        of={title}
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
          disabled={measurement.isBusy || done !== undefined || !hasOutcome || lacksSubject}
          onClick={() => void measurement.record()}
        >
          {measurement.isAgain ? 'Record it anew' : 'Record it'}
        </button>
        <button type="button" className="plain" onClick={measurement.startAnew}>
          {opened ? 'Back to what was recorded' : 'Clear and start anew'}
        </button>
        {cleared && (
          <button type="button" className="plain" onClick={measurement.bringBack}>
            Bring back what stood here before
          </button>
        )}
      </div>
      <p className="small soft" role="status">
        {sayWhy(hasOutcome, lacksSubject, measurement.isKept)}
      </p>
      <AskBack
        id="bench-asked"
        says={asked === '' ? undefined : asked}
        onAnyway={() => void measurement.record(true)}
        onChange={toReadings}
      />
      {refused && (
        <p className="bad" role="alert">
          {refused}
        </p>
      )}
      <div aria-live="polite">{done && <Changed home={`/refit/${session.id}`} {...done} />}</div>
    </section>
  );
}

/** Puts the cursor into the first reading, or the first entry of a test without rows. */
const toReadings = (): void =>
  (
    document.querySelector<HTMLElement>('.bench-readings input') ??
    document.querySelector<HTMLElement>('main .sheet input')
  )?.focus();

function sayWhy(hasOutcome: boolean, lacksSubject: boolean, isKept: boolean): string {
  if (!hasOutcome) return 'It can be recorded once there is a result.';
  if (lacksSubject) return 'Say above what it was measured on; then it can be recorded.';
  if (!isKept) return 'This is too large for the browser to keep over a reload: record it soon.';
  return 'What you type here is kept in this browser until it is recorded.';
}
