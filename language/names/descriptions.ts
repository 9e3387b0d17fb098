import {
    type AstNode,
    type AstNodeDescription,
    type AstNodeDescriptionProvider,
    type AstNodeLocator,
    AstUtils,
    CstUtils,
    type DocumentSegment,
    type LangiumDocument,
    type NameProvider,
    type URI,
} from 'langium';
import type { LangiumServices } from 'langium/lsp';

/** Describes what bears a name. Where it stands is worked out for those only of which somebody asks it. */
export class KerfDescriptions implements AstNodeDescriptionProvider {
    private readonly locator: AstNodeLocator;
    private readonly names: NameProvider;

    constructor(services: LangiumServices) {
        this.locator = services.workspace.AstNodeLocator;
        this.names = services.references.NameProvider;
    }

    createDescription(
        node: AstNode,
        name: string | undefined,
        document: LangiumDocument = AstUtils.getDocument(node),
    ): AstNodeDescription {
        const called = name ?? this.names.getName(node);
        if (called === undefined) throw new Error('What has no name cannot be described.');
        return new Description(node, called, document.uri, this.locator, this.names);
    }
}

/**
 * Its getters are those of a class on purpose. Langium's own descriptions each have a getter of their own, which the
 * engine makes as a thing of long life: through it every keystroke left its whole tree behind until a full collection.
 */
class Description implements AstNodeDescription {
    readonly type: string;
    private knownPath: string | undefined;

    constructor(
        readonly node: AstNode,
        readonly name: string,
        readonly documentUri: URI,
        private readonly locator: AstNodeLocator,
        private readonly names: NameProvider,
    ) {
        this.type = node.$type;
    }

    get path(): string {
        this.knownPath ??= this.locator.getAstNodePath(this.node);
        return this.knownPath;
    }

    // Whatever bears a name has been read from a text.
    get nameSegment(): DocumentSegment {
        return CstUtils.toDocumentSegment(this.names.getNameNode(this.node) ?? this.node.$cstNode)!;
    }

    get selectionSegment(): DocumentSegment {
        return CstUtils.toDocumentSegment(this.node.$cstNode)!;
    }
}
