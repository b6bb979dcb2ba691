/** One refit: its head, its pages, what is saved and what can be undone. */
import { lazy, Suspense, useEffect, useState } from 'react';
import { Link, Redirect, Route, Switch, useLocation } from 'wouter';
import { Top } from '../parts/top.tsx';
import { usePerson } from '../state/person.ts';
import { Session, useSession, type View } from '../state/session.ts';
import { Fault } from './fault.tsx';
import { Fit } from './fit.tsx';
import { History } from './history.tsx';
import { Keep } from './keep.tsx';
import { Know } from './know.tsx';
import { Movements, PagesOfMovement } from './movements.tsx';
import { Policies } from './policies.tsx';
import { Worth } from './worth.tsx';

const AuxiliariesPage = lazy(() => import('./auxiliaries.tsx'));
const ControlPage = lazy(() => import('./control.tsx'));
const EvidencePage = lazy(() => import('./evidence.tsx'));
const MovePage = lazy(() => import('./move.tsx'));
const StopPage = lazy(() => import('./stop.tsx'));
const SurveyPage = lazy(() => import('./survey.tsx'));
const SurveyPrint = lazy(() => import('./survey/print.tsx'));
const WiringPage = lazy(() => import('./wiring.tsx'));
const WorkPage = lazy(() => import('./work.tsx'));

export default function RefitPage({ id }: { id: string }) {
  const [session, setSession] = useState<Session>();
  useEffect(() => {
    const opened = new Session(id);
    setSession(opened);
    return () => opened.close();
  }, [id]);
  return session ? <Opened session={session} /> : null;
}

function Opened({ session }: { session: Session }) {
  const state = useSession(session);
  const { system } = usePerson();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the session reads the person's choice itself
  useEffect(() => {
    void session.setSystem();
  }, [session, system]);
  if (state.state === 'open') return <Pages session={session} view={state.view} />;
  return (
    <>
      <Top />
      <main id="content">
        {state.state === 'loading' ? (
          <p role="status">Opening the refit …</p>
        ) : (
          <>
            <h1>It cannot be opened</h1>
            <p role="alert">{state.message}</p>
            <p>
              <a href="/">Go to your refits</a>
            </p>
          </>
        )}
      </main>
    </>
  );
}

/** Says what Fettle does not do yet, so that nobody looks for it. */
const NoSuchPage = ({ home }: { home: string }) => (
  <>
    <h1>There is no such page in this refit</h1>
    <p>
      Fettle goes as far as wiring and stopping. Bringing the machine up step by step, tuning it at the
      machine, proving its accuracy and handing it over have no pages yet. To carry to the machine there are{' '}
      <Link href={`${home}/wiring/lists`}>the wire lists and the readings to expect</Link> and{' '}
      <Link href={`${home}/stop`}>the sheet that tests the stop circuit</Link>.
    </p>
    <p>
      <Link href={`${home}/know`}>What is known of this machine</Link>
    </p>
  </>
);

/** Everything is saved and nothing can be undone: the line below has nothing to say. */
const quiet = ({ saving, message, undoable }: View): boolean =>
  saving !== 'saving' && saving !== 'failed' && !message && undoable.length === 0;

function Pages({ session, view }: { session: Session; view: View }) {
  const [place] = useLocation();
  const home = `/refit/${session.id}`;
  const blank = view.recorded.counts.fits + view.recorded.counts.tight + view.recorded.counts.fails === 0;
  const first = blank ? 'know' : `fit/${view.refit.chains[0]?.id ?? 'machine'}`;
  useEffect(() => {
    document.title = `Fettle: ${view.refit.name}`;
  }, [view.refit.name]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if ((event.ctrlKey || event.metaKey) && event.key === 'z' && !typing) {
        event.preventDefault();
        void session.undo();
      }
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [session]);
  const where = {
    home,
    place,
    axes: view.refit.chains.filter(({ kind }) => kind === 'axis').map((chain) => chain.id),
  };
  return (
    <>
      <Top>
        <div className="who">
          <strong title={view.refit.name}>{view.refit.name}</strong>
        </div>
        <Movements {...where} />
      </Top>
      <main id="content">
        <PagesOfMovement {...where} />
        {view.recorded.problems.length > 0 && (
          <div className="caution" role="alert">
            <strong>Some entries cannot be read and count as unknown.</strong>
            <ul>
              {view.recorded.problems.map((problem) => (
                <li key={problem.where}>
                  {problem.where}: {problem.message}
                </li>
              ))}
            </ul>
          </div>
        )}
        <Suspense fallback={<p role="status">Fetching the page …</p>}>
          <Switch>
            <Route path={`${home}/know`}>
              <Know session={session} view={view} />
            </Route>
            <Route path={`${home}/evidence/*?`}>
              <EvidencePage session={session} view={view} />
            </Route>
            <Route path={`${home}/survey/print`}>
              <SurveyPrint session={session} view={view} />
            </Route>
            <Route path={`${home}/survey/*?`}>
              <SurveyPage session={session} view={view} />
            </Route>
            <Route path={`${home}/fit/:subject`}>
              {({ subject }) => <Fit key={subject} session={session} view={view} subject={subject} />}
            </Route>
            <Route path={`${home}/keep`}>
              <Keep session={session} view={view} />
            </Route>
            <Route path={`${home}/fault`}>
              <Fault refit={session.id} />
            </Route>
            <Route path={`${home}/worth`}>
              <Worth session={session} view={view} />
            </Route>
            <Route path={`${home}/move/:subject`}>
              {({ subject }) => <MovePage session={session} view={view} subject={subject} />}
            </Route>
            <Route path={`${home}/work/*?`}>
              <WorkPage session={session} view={view} />
            </Route>
            <Route path={`${home}/control`}>
              <ControlPage session={session} view={view} />
            </Route>
            <Route path={`${home}/auxiliaries`}>
              <AuxiliariesPage session={session} view={view} />
            </Route>
            <Route path={`${home}/stop`}>
              <StopPage session={session} view={view} />
            </Route>
            <Route path={`${home}/wiring/*?`}>
              <WiringPage session={session} view={view} />
            </Route>
            <Route path={`${home}/habits`}>
              <Policies session={session} view={view} />
            </Route>
            <Route path={`${home}/history`}>
              <History session={session} view={view} />
            </Route>
            <Route path={home}>
              <Redirect to={`${home}/${first}`} replace />
            </Route>
            <Route>
              <NoSuchPage home={home} />
            </Route>
          </Switch>
        </Suspense>
      </main>
      <footer className={`status${quiet(view) ? ' quiet' : ''}`}>
        <span role="status" className={view.saving === 'failed' ? 'bad' : 'soft'}>
          {view.saving === 'saving' ? 'Saving …' : view.message || 'Everything is saved.'}
        </span>
        {view.undoable.length > 0 && (
          <button type="button" onClick={() => void session.undo()}>
            Undo
          </button>
        )}
      </footer>
    </>
  );
}
