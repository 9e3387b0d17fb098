import type { Connection } from 'vscode-languageserver';
import { fromBase64, toBase64 } from '../../shared/quantity/base64';
import { phrase } from '../../shared/recipe/phrase';
import type { LookAnswer } from '../../shared/view/protocol';
import { editorRequests } from '../../shared/view/requests';
import { CannotWrite } from '../writing/cannot-write';
import type { Found, Store } from '../writing/store';

/** A folder that only the editor can reach: in a browser, or on a file system of the editor's own. It decides what lies in the workspace. */
export class ClientStore implements Store {
    constructor(
        private readonly connection: Connection,
        private readonly folder: string,
    ) {}

    async look(path: string): Promise<Found> {
        const answer = await this.connection.sendRequest<LookAnswer>(editorRequests.look.method, { folder: this.folder, path });
        if ('problem' in answer) throw new CannotWrite(phrase`${answer.problem}`);
        return answer.kind === 'file' ? { kind: 'file', bytes: fromBase64(answer.base64) } : answer;
    }

    async replace(files: ReadonlyMap<string, Uint8Array>): Promise<void> {
        const sent = [...files].map(([path, bytes]) => ({ path, base64: toBase64(bytes) }));
        await this.ask(editorRequests.put.method, { folder: this.folder, files: sent });
    }

    async remove(paths: readonly string[]): Promise<void> {
        await this.ask(editorRequests.remove.method, { folder: this.folder, paths });
    }

    private async ask(what: string, params: object): Promise<void> {
        const problem = await this.connection.sendRequest<string | null>(what, params);
        if (problem !== null) throw new CannotWrite(phrase`${problem}`);
    }
}
