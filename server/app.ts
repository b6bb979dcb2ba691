/** Requests to answers. Nothing a request holds can end the process or bring out more than a sentence. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { refusal } from './answer.ts';
import { Gone, Refusal, readBody } from './body.ts';
import type { Context } from './context.ts';
import { HEADERS, refuseStranger } from './guard.ts';
import type { Answer } from './http.ts';
import { makePages } from './pages.ts';
import { findRoute, stepsOf } from './router.ts';
import { routesOf } from './routes/index.ts';

/** `report` hears of mistakes of our own. */
export function makeApp(
  context: Context,
  pageFolder: string | undefined,
  report: (fault: unknown) => void,
): (request: IncomingMessage, response: ServerResponse) => void {
  const routes = routesOf(context);
  const pages = makePages(pageFolder);

  async function answerTo(request: IncomingMessage): Promise<Answer> {
    const [path = '', search = ''] = split(request.url ?? '', '?');
    const steps = path.startsWith('/') ? stepsOf(path) : undefined;
    const page = steps?.[0] !== 'api';
    const stranger = refuseStranger(request, page);
    if (stranger) return stranger;
    if (!steps)
      return refusal(400, 'malformed', 'This address cannot be read; a % in it stands for itself as %25.');
    const method = request.method === 'HEAD' ? 'GET' : (request.method ?? '');
    if (page) {
      return method === 'GET'
        ? await pages(steps)
        : refusal(405, 'method-not-allowed', 'This address takes GET only.', undefined, {
            allow: 'GET, HEAD',
          });
    }
    const found = findRoute(routes, method, steps);
    if ('status' in found) return found;
    const body = await readBody(request, found.route.takes);
    return await found.route.handle({
      at: found.at,
      query: new URLSearchParams(search),
      headers: request.headers,
      body,
    });
  }

  return (request, response) => {
    answerTo(request)
      .catch((fault: unknown) => {
        if (fault instanceof Refusal) return fault.answer;
        if (fault instanceof Gone) return undefined;
        report(fault);
        return ownMistake();
      })
      .then((answer) => {
        if (answer) send(request, response, answer);
      })
      .catch((fault: unknown) => {
        report(fault);
        response.destroy();
      });
  };
}

const ownMistake = (): Answer =>
  refusal(
    500,
    'own-mistake',
    'Fettle made a mistake of its own here; what was kept before is still there. Please report it.',
  );

function send(request: IncomingMessage, response: ServerResponse, { status, headers, body }: Answer): void {
  if (response.destroyed) return;
  response.writeHead(status, {
    ...HEADERS,
    ...headers,
    ...(typeof body === 'function' ? {} : { 'content-length': Buffer.byteLength(body) }),
  });
  if (request.method === 'HEAD') response.end();
  else if (typeof body === 'function') body(response);
  else response.end(body);
}

function split(text: string, at: string): [string, string] {
  const index = text.indexOf(at);
  return index < 0 ? [text, ''] : [text.slice(0, index), text.slice(index + 1)];
}
