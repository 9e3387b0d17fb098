import {
    type AstNode,
    AstUtils,
    type CstNode,
    CstUtils,
    DefaultReferences,
    DocumentState,
    type FindReferencesOptions,
    GrammarUtils,
    type LangiumDocuments,
    type ReferenceDescription,
    type Stream,
    stream,
} from 'langium';
import * as ast from '../generated/ast';
import type { KerfServices } from '../services';
import { basesOf } from '../variants/lineage';
import { membersOf } from '../variants/members';

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
        return super.findDeclarations(source).map((node) => originOf(node));
    }

    override findReferences(target: AstNode, options: FindReferencesOptions): Stream<ReferenceDescription> {
        const found = super.findReferences(target, options);
        const owner = ownerOf(target);
        if (owner === undefined) return found;
        const more = this.adjusting(target, owner, options);
        return more.length === 0 ? found : stream([...found, ...more]);
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
