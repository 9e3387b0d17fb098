import type { CancellationToken, Connection } from 'vscode-languageserver';
import type { Request } from '../../shared/view/requests';
import { Cancelled } from '../engine/jobs';

/** Answers a request of the editor's; work that was given up is answered with null. */
export function onRequest<Params, Answer>(
    connection: Connection,
    { method }: Request<Params, Answer>,
    work: (params: Params, token: CancellationToken) => Answer | Promise<Answer>,
): void {
    connection.onRequest(method, async (params: Params, token: CancellationToken): Promise<unknown> => {
        try {
            return await work(params, token);
        } catch (error) {
            if (error instanceof Cancelled) return null;
            throw error;
        }
    });
}
