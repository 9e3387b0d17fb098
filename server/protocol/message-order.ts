import { type Connection, ErrorCodes, type Message, ResponseError } from 'vscode-languageserver';
import { fits } from './params';

/** A request that is refused goes on under this name, so that the connection itself answers it. */
const refused = '$/kerfbook/refused';

interface Refusal {
    readonly code: number;
    readonly message: string;
}

interface Incoming extends Message {
    readonly id?: number | string | null;
    readonly method?: string;
    readonly params?: unknown;
}

/** What a connection is made with: see `inOrder`. */
interface InOrder {
    readonly messageStrategy: { handleMessage<Done>(message: Message, next: (message: Message) => Done): Done | Promise<void> };
}

/**
 * Holds clients to the order of the protocol and to its shapes, before anything is done: nothing but `initialize` comes
 * first, it comes once, nothing but `exit` comes after `shutdown`, and parameters are what the method takes.
 * A connection made with this needs `answerRefusals`.
 */
export function inOrder(): InOrder {
    let phase: 'new' | 'open' | 'shut' = 'new';
    const refusalOf = (method: string, params: unknown): Refusal | undefined => {
        if (phase === 'shut') return { code: ErrorCodes.InvalidRequest, message: 'The server has been shut down.' };
        if (method === 'initialize' && phase === 'open')
            return { code: ErrorCodes.InvalidRequest, message: 'The server has been initialized already.' };
        if (method !== 'initialize' && phase === 'new')
            return { code: ErrorCodes.ServerNotInitialized, message: 'The server has not been initialized.' };
        if (!fits(method, params))
            return { code: ErrorCodes.InvalidParams, message: `These are not the parameters of ${method}.` };
        return undefined;
    };
    return {
        messageStrategy: {
            handleMessage: (message, next) => {
                const { id, method, params } = message as Incoming;
                // An answer of the client's, or something that means the connection itself.
                if (method === undefined || method === 'exit' || (method.startsWith('$/') && method !== refused))
                    return next(message);
                const refusal = refusalOf(method, params);
                if (refusal !== undefined) {
                    return id === undefined
                        ? Promise.resolve()
                        : next({ ...message, method: refused, params: refusal } as Message);
                }
                if (method === 'initialize') phase = 'open';
                if (method === 'shutdown') phase = 'shut';
                return next(message);
            },
        },
    };
}

export function answerRefusals(connection: Connection): void {
    connection.onRequest(refused, ({ code, message }: Refusal) => new ResponseError(code, message));
}
