import { type AstNodeDescription, DefaultScopeComputation, type LangiumDocument, type LocalSymbols, MultiMap } from 'langium';

/** Scopes are looked up in the tree itself (scope-provider.ts); only the index for workspace symbols is filled here. */
export class KerfScopeComputation extends DefaultScopeComputation {
    override async collectLocalSymbols(): Promise<LocalSymbols> {
        return new MultiMap();
    }

    override async collectExportedSymbols(document: LangiumDocument): Promise<AstNodeDescription[]> {
        return super.collectExportedSymbols(document);
    }
}
