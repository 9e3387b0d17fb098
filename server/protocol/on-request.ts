import type { CancellationToken, Connection } from 'vscode-languageserver';
import type { Request } from '../../shared/view/requests';
import { Cancelled } from '../engine/jobs';

type Work = (params: never, token: CancellationToken) => unknown;

/** What is answered on a connection, by the name of the request. */
const answered = new WeakMap<Connection, Map<string, Work>>();

/** Answers a request of the editor's; work that was given up is answered with null. */
export function onRequest<Params, Answer>(
    connection: Connection,
    { method }: Request<Params, Answer>,
    work: (params: Params, token: CancellationToken) => Answer | Promise<Answer>,
): void {
    const known = answered.get(connection) ?? new Map<string, Work>();
    answered.set(connection, known.set(method, work));
    connection.onRequest(method, async (params: Params, token: CancellationToken): Promise<unknown> => {
        try {
            return await work(params, token);
        } catch (error) {
            if (error instanceof Cancelled) return null;
            throw error;
        }
    });
}

/** The same answer for a command of the server's own: null where there is none. The parameters are of the right shape already. */
export async function answerOf<Params, Answer>(
    connection: Connection,
    { method }: Request<Params, Answer>,
    params: NoInfer<Params>,
    token: CancellationToken,
): Promise<Answer | null> {
    const work = answered.get(connection)?.get(method);
    return work === undefined ? null : ((await work(params as never, token)) as Answer);
}
