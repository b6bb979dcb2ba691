/** One bench test: what can hurt first, then how, what is read, what it comes to, and recording it. */
import { useRef } from 'react';
import { Link, useLocation } from 'wouter';
import type { Session, View } from '../../state/session.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';
import { Entries } from './entries.tsx';
import { subjectFor, subjectsOf } from './groups.ts';
import { Hazards } from './hazards.tsx';
import { HowTo } from './how-to.tsx';
import { KeepIt } from './keep-it.tsx';
import { Readings } from './readings.tsx';
import { ResultPanel, sayShort } from './result-panel.tsx';
import { filled } from './rows.ts';
import { type Faults, faultsOf, sayDay } from './say.ts';
import { SubjectField } from './subject-field.tsx';
import { TableFile } from './table-file.tsx';
import { tableOf } from './table-text.ts';
import { useFootHeight } from './use-foot-height.ts';
import { type Measurement, useMeasurement } from './use-measurement.ts';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly sheet: BenchSheet;
  /** As the address says: 'X.motor', or ''. */
  readonly wanted: string;
  /** Id of a recorded measurement that is opened again. */
  readonly open: string | undefined;
}

export function Measure({ session, view, sheet, wanted, open }: Props) {
  const home = `/refit/${session.id}/evidence`;
  const [, navigate] = useLocation();
  const root = useRef<HTMLDivElement>(null);
  useFootHeight(root);
  const subjects = subjectsOf(view.refit, sheet);
  const subject = subjectFor(subjects, wanted) ?? (subjects.length === 1 ? subjects[0]!.value : '');
  const measurement = useMeasurement({ session, view, sheet, wanted, subject, open });
  const { opened, draft, change, isRead, isTouched, worked, slow, tidy } = measurement;
  const faults = faultsOf(sheet, worked?.problem);

  return (
    <div className="bench stack" ref={root}>
      <div>
        <p className="small">
          <Link href={home}>All bench tests</Link>
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
      <Hazards sheet={sheet} isRead={isRead} onRead={measurement.goOn} />
      <div className="columns two bench-work">
        <HowTo sheet={sheet} />
        {isRead ? (
          <div className="stack">
            {subjects.length > 0 && (
              <SubjectField
                subjects={subjects}
                subject={subject}
                isFixed={opened !== undefined}
                onChoose={(value) => {
                  measurement.moveDraft(value);
                  navigate(`${home}/${sheet.id}?for=${encodeURIComponent(value)}`, { replace: true });
                }}
              />
            )}
            {sheet.given.length > 0 && (
              <section className="sheet" aria-label="What is known of the set-up">
                <Entries
                  entries={sheet.given}
                  given={draft.given}
                  faults={isTouched ? faults.entries : {}}
                  onChange={(entry, text) => change({ ...draft, given: { ...draft.given, [entry]: text } })}
                />
              </section>
            )}
            {sheet.columns.length > 0 && (
              <ReadingsPanel
                name={`${session.id}-${sheet.id}.csv`}
                sheet={sheet}
                measurement={measurement}
                faults={faults}
              />
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
          <KeepIt
            session={session}
            title={sheet.title}
            measurement={measurement}
            lacksSubject={subjects.length > 0 && subject === ''}
          />
        </>
      )}
    </div>
  );
}

interface PanelProps {
  /** Of the file it is written to. */
  readonly name: string;
  readonly sheet: BenchSheet;
  readonly measurement: Measurement;
  readonly faults: Faults;
}

function ReadingsPanel({ name, sheet, measurement, faults }: PanelProps) {
  const { draft, change, paste, said, worked, slow, unfinished } = measurement;
  const { columns, least } = sheet;
  return (
    <section className="sheet" aria-labelledby="bench-readings">
      <div className="row spread">
        <h2 id="bench-readings">Readings</h2>
        <TableFile
          name={name}
          isEmpty={filled(draft.rows).length === 0}
          csv={() => tableOf(columns, draft.rows)}
          onText={measurement.bringIn}
          onFault={(fault) => measurement.say([fault])}
        />
      </div>
      <p className="small soft">
        {least > 1 && `At least ${least} rows. `}
        Enter goes to the next cell. You can paste from a spreadsheet.
      </p>
      <Readings
        columns={columns}
        rows={draft.rows}
        least={least}
        questions={worked?.outcome?.questions ?? []}
        faults={faults.rows}
        unfinished={unfinished}
        onRows={(rows) => change({ ...draft, rows })}
        onTyping={measurement.setTyping}
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
  );
}
