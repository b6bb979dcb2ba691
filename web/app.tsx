/** The pages and their addresses. */
import { lazy, Suspense } from 'react';
import { Route, Switch } from 'wouter';
import { Home } from './screens/home.tsx';

const RefitPage = lazy(() => import('./screens/refit.tsx'));
const NewRefit = lazy(() => import('./screens/new-refit.tsx'));
const Threads = lazy(() => import('./screens/threads.tsx'));

export function App() {
  return (
    <>
      <a className="skip" href="#content">
        Skip to the content
      </a>
      <Suspense
        fallback={
          <main id="content">
            <p role="status">Fetching the page …</p>
          </main>
        }
      >
        <Switch>
          <Route path="/">
            <Home />
          </Route>
          <Route path="/new">
            <NewRefit />
          </Route>
          <Route path="/threads">
            <Threads />
          </Route>
          <Route path="/refit/:id/*?">{({ id }) => <RefitPage key={id} id={id} />}</Route>
          <Route>
            <main id="content">
              <h1>There is no such page</h1>
              <p>
                <a href="/">Go to your refits</a>
              </p>
            </main>
          </Route>
        </Switch>
      </Suspense>
    </>
  );
}
