import { DocumentState, type LangiumDocument, type LangiumDocuments, WorkspaceCache } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import type { BurntPocket } from '../../shared/burn/run-rows';
import { KeptOn } from '../../shared/plan/kept';
import type { Run } from '../../shared/recipe/run';
import type * as ast from '../generated/ast';

/** What the runs of a file say. */
export interface FileRuns {
    readonly document: LangiumDocument;
    readonly runs: ReadonlyMap<ast.Run, Run>;
    readonly pockets: readonly BurntPocket[];
}

/** The files that are read and hold runs; which of them count for a recipe is for names/runs-in-sight.ts to say. */
export interface RunsRead {
    readonly files: readonly FileRuns[];
}

const lowered = new KeptOn<object, FileRuns>();

/** What all runs that are read measured; the same answer as before as long as none of them has changed. */
export class MeasuredRuns {
    private readonly documents: LangiumDocuments;
    private readonly cache: WorkspaceCache<'all', RunsRead>;
    private last: RunsRead = { files: [] };

    constructor(
        shared: LangiumSharedServices,
        private readonly lower: (document: LangiumDocument) => FileRuns | undefined,
    ) {
        this.documents = shared.workspace.LangiumDocuments;
        this.cache = new WorkspaceCache(shared, DocumentState.Linked);
    }

    all(): RunsRead {
        return this.cache.get('all', () => {
            const files = this.documents.all
                .filter(({ state }) => state >= DocumentState.Linked)
                .toArray()
                .flatMap((document) => this.ofFile(document) ?? [])
                .toSorted((a, b) => (a.document.uri.toString() < b.document.uri.toString() ? -1 : 1));
            const { last } = this;
            const isSame = files.length === last.files.length && files.every((each, at) => each === last.files[at]);
            if (!isSame) this.last = { files };
            return this.last;
        });
    }

    /** Lowered once a linking: a run is linked again when its recipe changes. */
    private ofFile(document: LangiumDocument): FileRuns | undefined {
        const known = lowered.get(document.references);
        if (known !== undefined) return known;
        const answer = this.lower(document);
        if (answer === undefined) return undefined;
        lowered.set(document.references, answer);
        return answer;
    }
}
