import { isOperationCancelled, URI } from 'langium';
import {
    type Connection,
    type Disposable,
    DocumentDiagnosticReportKind,
    LSPErrorCodes,
    ResponseError,
} from 'vscode-languageserver';
import { UnknownFile } from '../../language/workspace/unknown-file';

type Handler = (params: unknown, ...rest: unknown[]) => unknown;

/** Where a connection keeps more of its registrations. */
const groups = new Set([
    'languages',
    'workspace',
    'inlayHint',
    'semanticTokens',
    'callHierarchy',
    'diagnostics',
    'textDocumentContent',
    'typeHierarchy',
]);
/** What is told and not asked, and what belongs to the connection. */
const notAsked = /^on(Did|Initialize|Shutdown|Exit|Notification|Progress|Close|Error|Dispose)/;

/**
 * The connection as those see it who answer on it. Whatever becomes of their work, an asker hears it in the protocol's words: of
 * a file that is not known there is nothing to say, and work that was given up is a cancelled request. What is asked of
 * the client by the way (to register, to ask anew) may be refused without harm.
 * @param isKnown whether a file is open or one of the workspace's, once that has been read
 */
export function answering(connection: Connection, isKnown: (uri: URI) => Promise<boolean>): Connection {
    const settle = async (handler: Handler, nothing: unknown, params: unknown, rest: unknown[]): Promise<unknown> => {
        try {
            const address = addressIn(params);
            if (address !== undefined && !(await isKnown(URI.parse(address)))) return nothing;
            const answer = await handler(params, ...rest);
            return answer instanceof UnknownFile ? nothing : answer;
        } catch (error) {
            if (error instanceof UnknownFile) return nothing;
            if (isOperationCancelled(error))
                return new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
            throw error;
        }
    };
    const view = <Part extends object>(part: Part, group = ''): Part =>
        new Proxy(part, {
            get(target, name) {
                const value: unknown = Reflect.get(target, name);
                if (typeof name !== 'string') return value;
                if (name === 'client') return forgiving(value as Connection['client']);
                if (groups.has(name)) return view(value as object, name);
                if (typeof value !== 'function') return value;
                // Then the defaults are as good as any.
                if (name === 'getConfiguration') return (items: unknown) => Reflect.apply(value, target, [items]).catch(() => []);
                const asks = name.startsWith('on') && !notAsked.test(name);
                const nothing = nothingFor(group === '' ? name : group);
                return (...args: unknown[]) =>
                    Reflect.apply(
                        value,
                        target,
                        asks
                            ? args.map((each) =>
                                  typeof each === 'function'
                                      ? (params: unknown, ...rest: unknown[]) => settle(each as Handler, nothing, params, rest)
                                      : each,
                              )
                            : args,
                    );
            },
        });
    return view(connection);
}

/** What is said of a file that is not known: null, where the protocol has it. */
function nothingFor(name: string): unknown {
    if (name === 'onDocumentColor' || name === 'onColorPresentation') return [];
    return name === 'diagnostics' ? { kind: DocumentDiagnosticReportKind.Full, items: [] } : null;
}

/** The file that a request of the protocol's own is about. */
function addressIn(params: unknown): string | undefined {
    if (typeof params !== 'object' || params === null || !('textDocument' in params)) return undefined;
    const { textDocument } = params;
    if (typeof textDocument !== 'object' || textDocument === null || !('uri' in textDocument)) return undefined;
    return typeof textDocument.uri === 'string' ? textDocument.uri : undefined;
}

/** A client that will not register something goes without it. */
function forgiving(client: Connection['client']): Connection['client'] {
    const register = (...args: unknown[]): Promise<Disposable> =>
        (Reflect.apply(client.register, client, args) as Promise<Disposable>).catch(() => ({ dispose: () => {} }));
    return { ...client, connection: client.connection, register: register as never };
}
