import {
    type AstNode,
    type AstNodeDescription,
    type AstNodeDescriptionProvider,
    type AstReflection,
    AstUtils,
    type LangiumDocument,
    type LangiumDocuments,
    type ReferenceInfo,
    type Scope,
    type ScopeProvider,
    type Stream,
    stream,
    URI,
} from 'langium';
import { builtInUris } from '../built-in';
import { type File, isFile, isKind, isRecipe } from '../generated/ast';
import type { KerfServices } from '../module';
import { type NameMap, namesOfFile, namesOfRecipe } from './name-map';
import type { UsedFiles } from './used-files';

/**
 * What a name can mean: first the recipe's own art, blanks and steps, then its file, then the files
 * it uses, then the built-in stock. Looking a name up costs a few map reads however large the file is.
 */
export class KerfScopeProvider implements ScopeProvider {
    private readonly reflection: AstReflection;
    private readonly documents: LangiumDocuments;
    private readonly descriptions: AstNodeDescriptionProvider;
    private readonly usedFiles: UsedFiles;

    constructor(services: KerfServices) {
        this.reflection = services.shared.AstReflection;
        this.documents = services.shared.workspace.LangiumDocuments;
        this.descriptions = services.workspace.AstNodeDescriptionProvider;
        this.usedFiles = services.names.UsedFiles;
    }

    getScope(context: ReferenceInfo): Scope {
        const holder = context.container;
        const type = isKind(holder) ? holder.$container.$type : this.reflection.getReferenceType(context);
        // A shop's own `resin slow-epoxy { kind slow-epoxy }` means the built-in one, not itself.
        const self = isKind(holder) ? holder.$container : undefined;
        return new Layers(
            this.layers(holder),
            ({ type: found, node }) => node !== self && this.reflection.isSubtype(found, type),
        );
    }

    private layers(from: AstNode): NameMap[] {
        const layers: NameMap[] = [];
        const recipe = AstUtils.getContainerOfType(from, isRecipe);
        const document = AstUtils.getDocument(from);
        if (recipe !== undefined) {
            layers.push(namesOfRecipe(recipe, (node, name) => this.descriptions.createDescription(node, name, document)));
        }
        const files = [document, ...this.usedFiles.of(document).map((used) => used.document), ...this.builtIn()];
        for (const each of files) {
            const names = this.namesOf(each);
            if (names !== undefined) layers.push(names);
        }
        return layers;
    }

    private builtIn(): (LangiumDocument | undefined)[] {
        return builtInUris.map((uri) => this.documents.getDocument(URI.parse(uri)));
    }

    private namesOf(document: LangiumDocument | undefined): NameMap | undefined {
        const file = document?.parseResult.value as File | undefined;
        if (document === undefined || !isFile(file)) return undefined;
        return namesOfFile(file, (node, name) => this.descriptions.createDescription(node, name, document));
    }
}

class Layers implements Scope {
    constructor(
        private readonly layers: readonly NameMap[],
        private readonly fits: (description: AstNodeDescription) => boolean,
    ) {}

    getElement(name: string): AstNodeDescription | undefined {
        for (const layer of this.layers) {
            const found = layer.get(name)?.find(this.fits);
            if (found !== undefined) return found;
        }
        return undefined;
    }

    getElements(name: string): Stream<AstNodeDescription> {
        return stream(this.layers.flatMap((layer) => (layer.get(name) ?? []).filter(this.fits)));
    }

    getAllElements(): Stream<AstNodeDescription> {
        const nearest = new Map<string, AstNodeDescription>();
        for (const layer of this.layers) {
            for (const [name, bearers] of layer) {
                const fitting = bearers.find(this.fits);
                if (fitting !== undefined && !nearest.has(name)) nearest.set(name, fitting);
            }
        }
        return stream(nearest.values());
    }
}
