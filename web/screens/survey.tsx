/** The survey: what stands there, how good it is, what the old control knows, and a tag on every conductor end. */
import { Link, Route, Switch } from 'wouter';
import { type Share, surveyOf } from '../../engine/refit/survey.ts';
import type { Session, View } from '../state/session.ts';
import { Items } from './survey/items.tsx';
import { Keeps } from './survey/keeps.tsx';
import { Parts } from './survey/parts.tsx';
import { Tags } from './survey/tags.tsx';
import './survey/survey.css';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export default function SurveyPage({ session, view }: Props) {
  const home = `/refit/${session.id}/survey`;
  const survey = surveyOf(view.refit);
  const { shares } = survey;
  const open = shares.ends.all - shares.ends.done;
  return (
    <div className="stack">
      <div className="row spread">
        <h1>Survey of the machine</h1>
        <Link href={`${home}/print`} className="button">
          Sheets to print
        </Link>
      </div>
      <p>
        Walk round the machine before anything is taken off. What you do not know you can leave: nothing here
        has to be filled in.
      </p>
      <nav aria-label="Parts of the survey" className="survey-tabs">
        <Tab to={home} words="Parts" share={shares.parts} />
        <Tab to={`${home}/others`} words="Everything else" share={shares.items} />
        <Tab to={`${home}/control`} words="Old control" share={shares.keeps} />
        <Tab
          to={`${home}/tags`}
          words="Tags"
          share={shares.ends}
          says={shares.ends.all === 0 ? 'none yet' : open === 0 ? 'all tagged' : `${open} ends untagged`}
        />
      </nav>
      <Switch>
        <Route path={`${home}/others`}>
          <Items session={session} items={survey.items} />
        </Route>
        <Route path={`${home}/control`}>
          <Keeps session={session} keeps={survey.keeps} />
        </Route>
        <Route path={`${home}/tags`}>
          <Tags session={session} refit={view.refit} survey={survey} />
        </Route>
        <Route>
          <Parts session={session} parts={survey.parts} />
        </Route>
      </Switch>
    </div>
  );
}

interface TabProps {
  readonly to: string;
  readonly words: string;
  readonly share: Share;
  readonly says?: string;
}

function Tab({ to, words, share, says }: TabProps) {
  const here = location.pathname === to;
  return (
    <Link href={to} className="button tab" aria-current={here ? 'page' : undefined}>
      {words} <span className="small">{says ?? `${share.done} of ${share.all}`}</span>
    </Link>
  );
}
