import {
    type AstNodeDescription,
    AstUtils,
    type FileSystemProvider,
    GrammarAST,
    type LangiumDocument,
    type MaybePromise,
    type ReferenceInfo,
} from 'langium';
import {
    type CompletionAcceptor,
    type CompletionContext,
    type CompletionProviderOptions,
    type CompletionValueItem,
    DefaultCompletionProvider,
    findNextFeatures,
    type NextFeature,
} from 'langium/lsp';
import {
    type CompletionItem,
    CompletionItemKind,
    type CompletionList,
    type CompletionParams,
    InsertTextFormat,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { isBuiltIn } from '../built-in';
import { isTrait } from '../generated/ast';
import type { KerfServices } from '../module';
import type { OutsideServices } from '../outside';
import { propertyOf } from '../vocabulary/lookup';
import { proposePaths } from './complete-paths';
import { proposeUnits } from './complete-units';
import { proposeWord } from './complete-words';
import { describeDeclaration } from './describe-declaration';
import { isInComment, type Standing, standingAt } from './open-blocks';
import { summaryOf } from './summary';

const nothing = TextDocument.create('', 'kerf', 0, '');

/**
 * Proposals by place: lines of the block with what they do, names of the right kind with their
 * figures, units that fit the number, rules after `allow`, files inside quotes.
 */
export class KerfCompletion extends DefaultCompletionProvider {
    override readonly completionOptions: CompletionProviderOptions = { triggerCharacters: ['"', '/'] };
    private readonly outside: OutsideServices;
    private readonly files: FileSystemProvider;

    constructor(services: KerfServices) {
        super(services);
        this.outside = services.outside;
        this.files = services.shared.workspace.FileSystemProvider;
    }

    override async getCompletion(document: LangiumDocument, params: CompletionParams): Promise<CompletionList | undefined> {
        const offset = document.textDocument.offsetAt(params.position);
        if (isInComment(document.textDocument.getText(), offset, this.lexer)) return undefined;
        return super.getCompletion(document, params);
    }

    /** Only the open blocks and the statement before the cursor decide, so that broken lines elsewhere do not matter. */
    protected override findFeaturesAt(document: TextDocument, offset: number): NextFeature[] {
        const { heads, statement, atStart } = this.standing(document, offset);
        const goesOn = this.featuresAfter(`${heads}${statement}`) ?? [];
        // On a new line the statement before may go on, or another begin, even where that one is not finished.
        return atStart ? [...(this.featuresAfter(heads) ?? []), ...goesOn] : goesOn;
    }

    /** What can come after a text; undefined where the parser cannot read it to its end. */
    private featuresAfter(text: string): NextFeature[] | undefined {
        if (text.trim() === '') return super.findFeaturesAt(nothing, 0);
        const { tokens, tokenIndex, elementStack } = this.completionParser.parse(text);
        if (tokenIndex < tokens.length && tokenIndex === 0) return undefined;
        const left = tokens.slice(tokenIndex);
        const features = findNextFeatures([elementStack.map((feature) => ({ feature }))], left);
        return features.length === 0 && left.length > 0 ? undefined : features;
    }

    private standing(document: TextDocument, offset: number): Standing {
        return standingAt(document.getText(), offset, this.lexer);
    }

    protected override completionFor(
        context: CompletionContext,
        next: NextFeature,
        acceptor: CompletionAcceptor,
    ): MaybePromise<void> {
        const { feature } = next;
        if (!GrammarAST.isRuleCall(feature)) return super.completionFor(context, next, acceptor);
        const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? '';
        const terminal = feature.rule.$refText;
        if (rule === 'UnitName' && terminal === 'ID') {
            for (const proposal of proposeUnits(context.node)) acceptor(context, proposal);
        } else if (rule === 'Allow' && terminal === 'ID') this.rules(context, acceptor);
        else if (terminal === 'STRING' && (rule === 'Art' || rule === 'Use')) return this.paths(context, rule, acceptor);
        else if (isTrait(context.node)) this.choices(context, acceptor);
    }

    private rules(context: CompletionContext, acceptor: CompletionAcceptor): void {
        for (const { id, title, condition } of this.outside.pages.values()) {
            acceptor(context, {
                label: id,
                kind: CompletionItemKind.EnumMember,
                detail: title,
                documentation: { kind: 'markdown', value: condition },
                insertText: `${id} because "$1"`,
                insertTextFormat: InsertTextFormat.Snippet,
            });
        }
    }

    private choices(context: CompletionContext, acceptor: CompletionAcceptor): void {
        const { node } = context;
        if (!isTrait(node)) return;
        for (const choice of propertyOf(node.$container.$type, node.key)?.choices ?? []) {
            acceptor(context, { label: choice, kind: CompletionItemKind.EnumMember });
        }
    }

    private async paths(context: CompletionContext, rule: 'Art' | 'Use', acceptor: CompletionAcceptor): Promise<void> {
        const text = context.textDocument.getText();
        const typed = text.slice(context.tokenOffset, context.offset).replace(/^"/, '');
        const start = context.textDocument.positionAt(context.tokenOffset);
        const end = context.textDocument.positionAt(Math.max(context.offset, context.tokenEndOffset));
        const wanted = rule === 'Art' ? 'art' : 'recipe';
        for (const proposal of await proposePaths(typed, context.document.uri, wanted, this.files)) {
            const newText = `"${proposal.label}"`;
            acceptor(context, { ...proposal, filterText: newText, textEdit: { newText, range: { start, end } } });
        }
    }

    protected override completionForKeyword(
        context: CompletionContext,
        keyword: GrammarAST.Keyword,
        acceptor: CompletionAcceptor,
    ): void {
        if (!this.filterKeyword(context, keyword)) return;
        acceptor(context, proposeWord(keyword, this.standing(context.textDocument, context.tokenOffset)));
    }

    protected override createReferenceCompletionItem(
        description: AstNodeDescription,
        _info: ReferenceInfo,
        context: CompletionContext,
    ): CompletionValueItem {
        const { node, name } = description;
        const own = description.documentUri.toString() === context.document.uri.toString();
        const origin = isBuiltIn(description.documentUri.toString()) ? '2' : own ? '0' : '1';
        return {
            nodeDescription: description,
            kind: CompletionItemKind.Reference,
            // Grits are numbers: coarse comes before fine.
            sortText: `0${origin}${/^\d+$/.test(name) ? name.padStart(6, '0') : name}`,
            ...(node !== undefined && {
                detail: summaryOf(node),
                documentation: { kind: 'markdown', value: describeDeclaration(node) },
            }),
        };
    }

    protected override fillCompletionItem(context: CompletionContext, item: CompletionValueItem): CompletionItem | undefined {
        const filled = super.fillCompletionItem(context, item);
        const takesSnippets = this.clientCapabilities?.completionItem?.snippetSupport === true;
        if (filled === undefined || takesSnippets || filled.insertTextFormat !== InsertTextFormat.Snippet) return filled;
        const { insertTextFormat: _format, insertText: _text, textEdit: _edit, ...plain } = filled;
        return super.fillCompletionItem(context, plain as CompletionValueItem);
    }
}
