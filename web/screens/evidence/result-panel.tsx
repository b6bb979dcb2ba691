/** The result as it is typed. It keeps its place while nothing is there yet, so that the page does not jump. */
import type { Worked } from '../../state/bench.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';
import { Budget, Candidates, Results, sayResult, Verdicts, Working } from './outcome.tsx';
import { PlotPicture } from './plot.tsx';
import { plotOf } from './plot-data.ts';
import type { Row } from './rows.ts';
import type { Faults } from './say.ts';

/** One line under the readings, so that the value is in sight while they are typed. */
export function sayShort(worked: Worked | undefined, unfinished: number | undefined): string {
  const row = unfinished === undefined ? '' : ` Row ${unfinished} is not whole yet.`;
  if (!worked) return '…';
  if (!worked.outcome) return row === '' ? 'No result yet.' : `No result yet.${row}`;
  const values = worked.outcome.results.map(sayResult).slice(0, 2).join(', ');
  const odd = worked.outcome.questions.length;
  const asked = odd === 0 ? '' : ` ${odd === 1 ? 'One thing is' : `${odd} things are`} odd.`;
  return `${values || 'Worked out; see below.'}${values ? '.' : ''}${asked}${row}`;
}

interface Props {
  readonly sheet: BenchSheet;
  readonly worked: Worked | undefined;
  readonly slow: boolean;
  readonly faults: Faults;
  readonly rows: readonly Row[];
  readonly tidy: (sentence: string) => string;
  readonly isTouched: boolean;
}

export function ResultPanel({ sheet, worked, slow, faults, rows, tidy, isTouched }: Props) {
  const { outcome, problem } = worked ?? {};
  const plot = outcome && plotOf(sheet.id, sheet.columns, rows);
  const isPictured = plot !== undefined || outcome?.candidates !== undefined;
  const odd = new Set(outcome?.questions.flatMap(({ row }) => (row === undefined ? [] : [row])));
  const general = outcome?.questions.filter(({ row }) => row === undefined) ?? [];
  const fieldFaults = Object.keys(faults.entries).length + faults.rows.size;
  return (
    <section className="sheet bench-result" aria-labelledby="bench-result" aria-busy={slow}>
      <h2 id="bench-result">What it comes to</h2>
      {slow && <p className="soft">Working it out …</p>}
      {problem && (
        <p className={isTouched && faults.whole && rows.length > 0 ? 'bad' : 'soft'}>
          {faults.whole ??
            [...Object.values(faults.entries), ...faults.rows.values()][0] ??
            (fieldFaults > 0 ? 'Something above cannot be read yet.' : '')}
        </p>
      )}
      {outcome && (
        <>
          <div className="columns two">
            <div className="stack">
              <Results results={outcome.results} />
              {general.map(({ sentence }) => (
                <p key={sentence} className="caution">
                  <strong>Odd? </strong>
                  {tidy(sentence)}
                </p>
              ))}
              <Verdicts verdicts={outcome.verdicts} tidy={tidy} />
              {isPictured && <Budget results={outcome.results} />}
            </div>
            <div className="stack">
              {outcome.candidates && <Candidates candidates={outcome.candidates} />}
              {plot && <PlotPicture plot={plot} odd={odd} />}
              {!isPictured && <Budget results={outcome.results} />}
            </div>
          </div>
          <Working working={outcome.working} />
        </>
      )}
    </section>
  );
}
