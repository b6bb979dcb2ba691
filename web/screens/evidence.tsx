/** Bench tests: the list, and one test with its readings and its result. */
import { Link, Route, Switch, useSearch } from 'wouter';
import { useBenchSheets } from '../state/bench.ts';
import type { Session, View } from '../state/session.ts';
import { subjectOfPart } from './evidence/groups.ts';
import { List } from './evidence/list.tsx';
import { Measure } from './evidence/measure.tsx';
import './survey/survey.css';
import './evidence/evidence.css';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export default function EvidencePage({ session, view }: Props) {
  const home = `/refit/${session.id}/evidence`;
  const sheets = useBenchSheets(session);
  const search = new URLSearchParams(useSearch());
  if (!sheets) return <p role="status">Fetching the bench tests …</p>;
  return (
    <Switch>
      <Route path={`${home}/:method`}>
        {({ method }) => {
          const sheet = sheets.find(({ id }) => id === method);
          if (!sheet) return <Gone home={home} words="There is no such bench test" />;
          const open = search.get('open') ?? undefined;
          const evidence = open === undefined ? undefined : view.refit.evidence[open];
          if (open !== undefined && evidence?.method !== sheet.id)
            return <Gone home={home} words="There is no such measurement in this refit" />;
          const wanted = evidence
            ? (subjectOfPart(view.refit, sheet, evidence.part) ?? '')
            : (search.get('for') ?? '');
          return (
            <Measure
              key={`${method} ${open ?? wanted}`}
              session={session}
              view={view}
              sheet={sheet}
              wanted={wanted}
              open={open}
            />
          );
        }}
      </Route>
      <Route>
        <List session={session} view={view} sheets={sheets} />
      </Route>
    </Switch>
  );
}

function Gone({ home, words }: { home: string; words: string }) {
  return (
    <>
      <h1>{words}</h1>
      <p>
        <Link href={home}>Go to all bench tests</Link>
      </p>
    </>
  );
}
