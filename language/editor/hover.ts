import { type AstNode, CstUtils, GrammarAST, type LangiumDocument, type LangiumDocuments, type LeafCstNode } from 'langium';
import { AstNodeHoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver';
import { couponHover } from '../coupon/coupon-hover';
import {
    isAmount,
    isArt,
    isArtUse,
    isCount,
    isPosition,
    isQuantity,
    isRecipe,
    isSize,
    isStep,
    isUse,
    type Position,
    type Quantity,
    type Size,
} from '../generated/ast';
import { aboutOf } from '../lowering/about';
import type { OutsideServices } from '../outside';
import { plannedHover } from '../planned/planned-hover';
import { plannedRun } from '../planned/planned-step';
import type { KerfServices } from '../services';
import { isLine } from '../vocabulary/lookup';
import { anchorOf, anchorOfWord } from '../vocabulary/manual';
import type { KerfLanguageServer } from '../workspace/language-server';
import { describeArt } from './describe-art';
import { describeDeclaration, escaped } from './describe-declaration';
import { describeNumber } from './describe-number';
import { describeUse } from './describe-use';
import { describeAllowed, describeValue } from './describe-value';
import { describeWord } from './describe-word';
import { runHover } from './run-hover';

const openManual = 'kerfbook.openManual';

/** Says what lies under the cursor: a name by what it stands for, a number in other units, a word by what it does, art by its parts. */
export class KerfHover extends AstNodeHoverProvider {
    private readonly outside: OutsideServices;
    private readonly documents: LangiumDocuments;

    constructor(private readonly services: KerfServices) {
        super(services);
        this.outside = services.outside;
        this.documents = services.shared.workspace.LangiumDocuments;
    }

    override async getHoverContent(document: LangiumDocument, params: HoverParams): Promise<Hover | undefined> {
        const root = document.parseResult.value.$cstNode;
        if (root === undefined) return undefined;
        const offset = document.textDocument.offsetAt(params.position);
        const leaf = CstUtils.findLeafNodeAtOffset(root, offset);
        if (leaf === undefined || leaf.hidden) return undefined;
        const range = { start: document.textDocument.positionAt(leaf.offset), end: document.textDocument.positionAt(leaf.end) };
        const parts = [
            await this.said(leaf),
            await couponHover(leaf.astNode, this.outside),
            await runHover(leaf.astNode, this.services),
            this.run(document, leaf),
            this.planned(document, leaf),
            this.inManual(leaf),
        ].filter((part) => part !== undefined && part !== '');
        return parts.length === 0 ? undefined : { contents: { kind: 'markdown', value: parts.join('\n\n') }, range };
    }

    /** A link to the manual's page of the language, where the editor has the command that opens it. */
    private inManual(leaf: LeafCstNode): string | undefined {
        const { commands } = (this.services.shared.lsp.LanguageServer as KerfLanguageServer).client;
        if (!commands.has(openManual)) return undefined;
        const [declaration] = this.references.findDeclarations(leaf);
        const isWord = GrammarAST.isKeyword(leaf.grammarSource);
        const anchor = declaration
            ? anchorOf(declaration.$type)
            : isWord && /^[a-z]/.test(leaf.text)
              ? anchorOfWord(leaf.text, leaf.astNode)
              : undefined;
        return anchor && `[Manual](command:${openManual}?${encodeURIComponent(JSON.stringify([anchor]))})`;
    }

    /** On a recipe's name and on its `make`: what the last plan said of the run. */
    private run(document: LangiumDocument, { astNode: node, text }: LeafCstNode): string | undefined {
        const isMake = isCount(node) && isLine(node, 'make');
        const recipe =
            isRecipe(node) && text === node.name ? node : isMake && isRecipe(node.$container) ? node.$container : undefined;
        return recipe && plannedRun(recipe, this.outside.runs(document.uri.toString()))?.hover;
    }

    /** On a depth or tone, and on a step's first words: the settings that the last plan solved, and what they give. */
    private planned(document: LangiumDocument, leaf: LeafCstNode): string | undefined {
        const lines = plannedHover(leaf, document, this.outside.planned(document.uri.toString()));
        if (lines === undefined) return undefined;
        const [solved = '', ...facts] = lines.map(escaped);
        return [`**As planned:** ${solved}`, facts.map((fact) => `- ${fact}`).join('\n')].join('\n\n').trimEnd();
    }

    private async said(leaf: LeafCstNode): Promise<string | undefined> {
        const node = leaf.astNode;
        const declarations = this.references.findDeclarations(leaf);
        if (declarations.length > 0) {
            const [art] = declarations.filter(isArt);
            const ofArt = art && (await describeArt(art, this.outside));
            return [...declarations.map(describeDeclaration), ...(ofArt === undefined ? [] : [ofArt])].join('\n\n');
        }
        if (GrammarAST.isKeyword(leaf.grammarSource)) return withAbout(leaf, describeWord(leaf.text, node));
        if (isArt(node) && leaf.text.startsWith('"')) return describeArt(node, this.outside);
        if (isUse(node)) return describeUse(node, this.documents);
        if (isArtUse(node)) return describePick(leaf.text);
        return describeMeasured(node) ?? (await describeAllowed(leaf, node, this.outside)) ?? describeValue(leaf, node);
    }

    protected override getAstNodeHoverContent(node: AstNode): string {
        return describeDeclaration(node);
    }
}

/** On the first word of a step: what is said of the step above it. */
function withAbout({ astNode: node, offset }: LeafCstNode, described: string | undefined): string | undefined {
    const about = isStep(node) && node.$cstNode?.offset === offset ? aboutOf(node) : undefined;
    if (about === undefined) return described;
    return [escaped(about), described].filter((part) => part !== undefined).join('\n\n');
}

function describePick(pick: string): string | undefined {
    if (pick.startsWith('#')) return `Only the part with the id \`${pick.slice(1)}\`.`;
    return pick.startsWith('.') ? `Only the parts of the class \`${pick.slice(1)}\`.` : undefined;
}

function describeMeasured(node: AstNode): string | undefined {
    const measured = isAmount(node) ? node.$container : node;
    return isMeasured(measured) ? describeNumber(measured) : undefined;
}

function isMeasured(node: AstNode | undefined): node is Quantity | Size | Position {
    return isQuantity(node) || isSize(node) || isPosition(node);
}
