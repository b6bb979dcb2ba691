/** One part: reasons, tests, what is asked of it, what it costs, and what each other option would change. */

import { Link } from 'wouter';
import type { Bill, PartAdvice, Swap } from '../../engine/advice/index.ts';
import { factSpec } from '../../engine/parts/index.ts';
import { sayMoney } from '../../engine/quantity/money.ts';
import type { Verdict } from '../../engine/quantity/verdict.ts';
import { FactField } from '../parts/fact-field.tsx';
import { sayMargin } from '../parts/margin-rule.tsx';
import { VerdictWord } from '../parts/verdict.tsx';
import type { Session, View } from '../state/session.ts';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly advice: PartAdvice;
}

const LEVEL = { good: 'passes', doubtful: 'doubtful', bad: 'does not pass', note: 'note' } as const;
const FOUND = { works: 'it works', worn: 'worn', dead: 'dead', unknown: 'not known' } as const;

export function KeepPart({ session, view, advice }: Props) {
  return (
    <div className="stack">
      <p>
        Condition: {advice.condition ? FOUND[advice.condition] : 'nobody has noted it'}. {advice.notes}{' '}
        {(advice.condition === undefined || advice.condition === 'unknown') && (
          <Link href={`/refit/${session.id}/survey`}>Note how you found it</Link>
        )}
      </p>
      <section>
        <h2>What speaks for it</h2>
        <ul>
          {advice.reasons.map(({ sentence, source }) => (
            <li key={sentence}>
              {sentence} <span className="small soft">({source})</span>
            </li>
          ))}
        </ul>
      </section>
      {advice.tests.length > 0 && (
        <section>
          <h2>Tests</h2>
          <ul>
            {advice.tests.map(({ title, level, sentence }) => (
              <li key={`${title} ${sentence}`}>
                <strong>
                  {title}: {LEVEL[level]}.
                </strong>{' '}
                {sentence}
              </li>
            ))}
          </ul>
        </section>
      )}
      <section>
        <h2>What the machine asks of it</h2>
        {advice.asks.length === 0 && <p>Nothing is asked of it by itself.</p>}
        <ul className="steps">
          {advice.asks.map((finding) => (
            <li key={finding.id} className="row spread">
              <span>{finding.title}</span>
              <span className="row">
                <VerdictWord verdict={finding.verdict} /> {sayMargin(finding)}
              </span>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>{advice.recommendation === 'buy' ? 'What it costs' : 'What keeping it costs'}</h2>
        <BillTable session={session} view={view} bill={advice.keeping} />
      </section>
      <section>
        <h2>What else could be there</h2>
        {advice.swaps.length === 0 && (
          <p>Nothing else is on offer. Add another part in this place on the page Know to compare it here.</p>
        )}
        {advice.swaps.map((swap) => (
          <SwapTable
            key={swap.parts.map(({ part }) => part).join(' ')}
            session={session}
            view={view}
            swap={swap}
          />
        ))}
      </section>
      {advice.doubt.length > 0 && (
        <section>
          <h2>What doubt remains</h2>
          <ul>
            {advice.doubt.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

/** Each item with a field for its price. */
function BillTable({ session, view, bill }: { session: Session; view: View; bill: Bill }) {
  const spare = bill.items.every(({ money }) => money) && !bill.total;
  return (
    <>
      {bill.items.map((item) => {
        const [place = '', fact = ''] = item.path
          .replace(/@[^.]*/, '')
          .split('.')
          .slice(-2);
        const spec = factSpec(place, fact);
        const id = /@([^.]*)/.exec(item.path)?.[1] ?? '';
        const known = view.refit.parts[id]?.facts[fact];
        return spec ? (
          <FactField
            key={item.path}
            session={session}
            view={view}
            path={item.path}
            spec={{ ...spec, name: item.name }}
            fact={known}
            aside={item.money ? sayMoney(item.money) : 'not known'}
          />
        ) : null;
      })}
      <p>
        {bill.total && bill.complete && <strong>Together: {sayMoney(bill.total)}.</strong>}
        {!bill.complete && !spare && 'Not every price is known, so nothing is added or compared.'}
        {spare && 'The prices are in different currencies, so nothing is added or compared.'}
      </p>
    </>
  );
}

function SwapTable({ session, view, swap }: { session: Session; view: View; swap: Swap }) {
  const bothAsked = swap.changes.filter(({ after }) => after !== undefined);
  const gone = swap.changes.filter(({ after }) => after === undefined);
  return (
    <div>
      <h3>{swap.says}</h3>
      <p>
        Mends {swap.mends}, breaks {swap.breaks}
        {swap.loses > 0
          ? `, leaves ${swap.loses} unknown that ${swap.loses === 1 ? 'was' : 'were'} known`
          : ''}
        .{swap.changes.length === 0 && ' No verdict would change.'}
      </p>
      {bothAsked.length > 0 && <Changes changes={bothAsked} caption={`With ${swap.says}`} />}
      {gone.length > 0 && (
        <details>
          <summary>
            {gone.length} {gone.length === 1 ? 'question' : 'questions'} no longer asked
          </summary>
          <Changes changes={gone} caption={`No longer asked with ${swap.says}`} />
        </details>
      )}
      <BillTable session={session} view={view} bill={swap.bill} />
    </div>
  );
}

function Changes({ changes, caption }: { changes: Swap['changes']; caption: string }) {
  return (
    <table>
      <caption className="hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Question</th>
          <th scope="col">Now</th>
          <th scope="col">With it</th>
        </tr>
      </thead>
      <tbody>
        {changes.map((change) => (
          <tr key={change.id}>
            <td>{change.title}</td>
            <td>
              <Cell verdict={change.before} margin={change.marginBefore} />
            </td>
            <td>
              <Cell verdict={change.after} margin={change.marginAfter} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Cell({ verdict, margin }: { verdict: Verdict | undefined; margin: number | null | undefined }) {
  if (!verdict) return <span className="soft">not asked</span>;
  return (
    <>
      <VerdictWord verdict={verdict} />
      {typeof margin === 'number' && verdict !== 'unknown' && (
        <>
          <br />
          <span className="small soft">{sayMargin({ verdict, margin })}</span>
        </>
      )}
    </>
  );
}
