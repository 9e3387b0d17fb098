import { AstUtils, CstUtils, type LangiumDocument, type LangiumDocuments, URI } from 'langium';
import { DefaultRenameProvider } from 'langium/lsp';
import {
    LSPErrorCodes,
    type Position,
    type Range,
    type RenameParams,
    ResponseError,
    type WorkspaceEdit,
} from 'vscode-languageserver';
import { isBuiltIn } from '../built-in';
import { isNewer } from '../edition';
import { kindWords } from '../findings/unknown-name';
import { isAbrasive, isBurnt, isCut, isEngrave, isStep, KerfTerminals } from '../generated/ast';
import { bearerOf, setOfNames } from '../names/taken';
import { needsItsKind } from '../parsing/run-lines';
import type { KerfServices } from '../services';

const name = new RegExp(`^(?:${KerfTerminals.ID.source})$`);

/** Renames a thing wherever it is meant, across files. Refuses names that the language could not read back. */
export class KerfRename extends DefaultRenameProvider {
    private readonly documents: LangiumDocuments;

    constructor(private readonly services: KerfServices) {
        super(services);
        this.documents = services.shared.workspace.LangiumDocuments;
    }

    override async rename(document: LangiumDocument, params: RenameParams): Promise<WorkspaceEdit | undefined> {
        this.refuseBuiltIn(document, params.position);
        const isGrit = this.targetAt(document, params.position).some(isAbrasive) && /^\d+$/.test(params.newName);
        if (!isGrit && !name.test(params.newName))
            throw refusal('A name is made of letters, digits, - and _, and begins with a letter.');
        const [target] = this.targetAt(document, params.position);
        if (target !== undefined && bearerOf(params.newName, target, this.services) !== undefined) {
            throw refusal(
                `There is already a ${kindWords[setOfNames(target)] ?? (isStep(target) ? 'step' : 'thing')} called "${params.newName}".`,
            );
        }
        const edit = await super.rename(document, params);
        const changed = Object.keys(edit?.changes ?? {}).flatMap((uri) => this.documents.getDocument(URI.parse(uri)) ?? []);
        if (changed.some(isNewer)) throw refusal('A file that names it is written for a later edition and is not changed.');
        if (edit !== undefined && target !== undefined && (isEngrave(target) || isCut(target)) && needsItsKind(params.newName)) {
            this.tellKind(edit, target.$type.toLowerCase());
        }
        return edit;
    }

    /** In a run, a step that is called like a word of the run has its kind before its name. */
    private tellKind(edit: WorkspaceEdit, kind: string): void {
        for (const [uri, changes] of Object.entries(edit.changes ?? {})) {
            const document = this.documents.getDocument(URI.parse(uri));
            const root = document?.parseResult.value.$cstNode;
            for (const change of document === undefined || root === undefined ? [] : changes) {
                const leaf = CstUtils.findLeafNodeAtOffset(root!, document!.textDocument.offsetAt(change.range.start));
                const isBare = leaf !== undefined && isBurnt(leaf.astNode) && leaf.astNode.kind === undefined;
                if (isBare && leaf.offset === leaf.astNode.$cstNode?.offset) change.newText = `${kind} ${change.newText}`;
            }
        }
    }

    protected override renameNodeRange(document: LangiumDocument, position: Position): Range | undefined {
        this.refuseBuiltIn(document, position);
        return super.renameNodeRange(document, position);
    }

    private refuseBuiltIn(document: LangiumDocument, position: Position): void {
        const builtIn = this.targetAt(document, position).some((node) => isBuiltIn(AstUtils.getDocument(node).uri.toString()));
        if (builtIn) throw refusal('Built-in stock keeps its name. Declare your own with `kind`, and name that.');
    }

    private targetAt(document: LangiumDocument, position: Position) {
        const root = document.parseResult.value.$cstNode;
        const offset = document.textDocument.offsetAt(position);
        const leaf = root && CstUtils.findDeclarationNodeAtOffset(root, offset, this.grammarConfig.nameRegexp);
        return leaf === undefined ? [] : this.references.findDeclarations(leaf);
    }
}

function refusal(message: string): ResponseError {
    return new ResponseError(LSPErrorCodes.RequestFailed, message);
}
