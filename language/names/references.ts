import {
    type AstNode,
    AstUtils,
    type CstNode,
    CstUtils,
    DefaultReferences,
    DocumentState,
    type FindReferencesOptions,
    GrammarUtils,
    type LangiumDocument,
    type LangiumDocuments,
    type ReferenceDescription,
    type Stream,
    stream,
} from 'langium';
import * as ast from '../generated/ast';
import type { KerfServices } from '../services';
import { basesOf } from '../variants/lineage';
import { membersOf } from '../variants/members';
import { type Called, calledNode, isCalled, meantByName, stepCalledAt } from './called-steps';

/**
 * A name by which a variant adjusts something of its base means that thing: it leads there, is found
 * with its references, and is renamed with it.
 */
export class KerfReferences extends DefaultReferences {
    private readonly all: LangiumDocuments;

    constructor(services: KerfServices) {
        super(services);
        this.all = services.shared.workspace.LangiumDocuments;
    }

    override findDeclarations(source: CstNode): AstNode[] {
        const step = stepCalledAt(source);
        return step === undefined ? super.findDeclarations(source).map((node) => originOf(node)) : [step];
    }

    /** A step without a name of the usual kind shows where it is `called`. */
    override findDeclarationNodes(source: CstNode): CstNode[] {
        const word = calledNodeOf(stepCalledAt(source));
        return word === undefined ? super.findDeclarationNodes(source) : [word];
    }

    override findReferences(target: AstNode, options: FindReferencesOptions): Stream<ReferenceDescription> {
        if (isCalled(target) && ast.isStep(target)) return stream(this.calling(target, options));
        const found = super.findReferences(target, options);
        const owner = ownerOf(target);
        if (owner === undefined) return found;
        const more = this.adjusting(target, owner, options);
        return more.length === 0 ? found : stream([...found, ...more]);
    }

    /** The name behind `called`, and every place of this recipe and its variants that means the step by it. */
    private calling(step: ast.Step & Called, { documentUri, includeDeclaration }: FindReferencesOptions): ReferenceDescription[] {
        const owner = AstUtils.getContainerOfType<ast.Recipe>(step, ast.isRecipe);
        const { uri: targetUri } = AstUtils.getDocument(step);
        const targetPath = this.nodeLocator.getAstNodePath(step);
        const recipes = this.recipes().filter(
            (recipe) => recipe === owner || (owner !== undefined && basesOf(recipe).includes(owner)),
        );
        const all = [...(includeDeclaration ? [step] : []), ...recipes.flatMap((recipe) => meantByName(step, recipe))];
        return all.flatMap((node): ReferenceDescription[] => {
            const word = calledNode(node);
            const { uri } = AstUtils.getDocument(node);
            if (word === undefined || (documentUri !== undefined && documentUri.toString() !== uri.toString())) return [];
            return [
                {
                    sourceUri: uri,
                    sourcePath: this.nodeLocator.getAstNodePath(node),
                    targetUri,
                    targetPath,
                    segment: CstUtils.toDocumentSegment(word),
                    local: uri.toString() === targetUri.toString(),
                },
            ];
        });
    }

    private recipes(): ast.Recipe[] {
        const isReady = ({ state }: LangiumDocument): boolean => state >= DocumentState.ComputedScopes;
        const files = this.all.all.filter(isReady).map(({ parseResult }) => parseResult.value);
        return files.toArray().flatMap((file) => (ast.isFile(file) ? file.entries.filter(ast.isRecipe) : []));
    }

    /** The names in all variants that adjust this part of a recipe. */
    private adjusting(target: AstNode, owner: ast.Recipe, { documentUri }: FindReferencesOptions): ReferenceDescription[] {
        const { uri: targetUri } = AstUtils.getDocument(target);
        const targetPath = this.nodeLocator.getAstNodePath(target);
        const found: ReferenceDescription[] = [];
        for (const document of this.all.all) {
            const file = document.parseResult.value;
            if (documentUri !== undefined && document.uri.toString() !== documentUri.toString()) continue;
            if (!ast.isFile(file) || document.state < DocumentState.ComputedScopes) continue;
            for (const variant of file.entries.filter(ast.isRecipe)) {
                if (variant.base === undefined || !basesOf(variant).includes(owner)) continue;
                for (const item of variant.items) {
                    const name = isSame(item, target) ? GrammarUtils.findNodeForProperty(item.$cstNode, 'name') : undefined;
                    if (name === undefined) continue;
                    found.push({
                        sourceUri: document.uri,
                        sourcePath: this.nodeLocator.getAstNodePath(item),
                        targetUri,
                        targetPath,
                        segment: CstUtils.toDocumentSegment(name),
                        local: targetUri.toString() === document.uri.toString(),
                    });
                }
            }
        }
        return found;
    }
}

function calledNodeOf(step: ast.Step | undefined): CstNode | undefined {
    return isCalled(step) ? calledNode(step) : undefined;
}

/** The recipe whose part this is. */
function ownerOf(node: AstNode): ast.Recipe | undefined {
    if (!isPart(node)) return undefined;
    return AstUtils.getContainerOfType(node, ast.isRecipe);
}

function isPart(node: AstNode): node is ast.Art | ast.Blank | ast.Places | ast.Engrave | ast.Cut {
    return ast.isArt(node) || ast.isBlank(node) || ast.isPlaces(node) || ast.isEngrave(node) || ast.isCut(node);
}

function isSame(item: AstNode, target: AstNode): boolean {
    return isPart(item) && isPart(target) && item !== target && item.$type === target.$type && item.name === target.name;
}

/** Where the name of a part was first given: in the base furthest down that has it. */
function originOf(node: AstNode): AstNode {
    const owner = ownerOf(node);
    if (owner?.base === undefined || !isPart(node)) return node;
    for (const base of basesOf(owner).reverse()) {
        const origin = membersOf(base).find((item) => isSame(item, node));
        if (origin !== undefined) return origin;
    }
    return node;
}
