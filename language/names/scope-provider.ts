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
import {
    type File,
    isBurnt,
    isFile,
    isKind,
    isMaterial,
    isRecipe,
    isRoutine,
    isRun,
    isWanted,
    type Recipe,
    type Sheet,
} from '../generated/ast';
import type { KerfServices } from '../services';
import { basesOf } from '../variants/lineage';
import { type NameMap, namesOfFile, namesOfRecipe, namesOfRoutine, namesOfSheet } from './name-map';
import { filesAround } from './runs-in-sight';
import type { UsedFiles } from './used-files';

const builtInFiles = builtInUris.map((uri) => URI.parse(uri));

/**
 * What a name can mean: first the own art, blanks and steps of the recipe or of the one a run is of, or the piece of a routine, then its file, then the files
 * it uses, then the built-in stock. A run needs no `use` for a recipe beside it or in a folder above, nor for what that one uses. Looking a name up costs a few map reads however large the file is.
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
        if (context.property === 'lot' && (isMaterial(holder) || isBurnt(holder))) return this.lots(holder.sheet?.ref);
        const type = isKind(holder) ? holder.$container.$type : this.reflection.getReferenceType(context);
        // A shop's own `resin slow-epoxy { kind slow-epoxy }` means the built-in one, not itself; so does a variant.
        const self = isKind(holder) ? holder.$container : isRecipe(holder) ? holder : undefined;
        const layers = new Layers(
            () => this.layers(holder),
            ({ type: found, node }) => node !== self && this.reflection.isSubtype(found, type),
        );
        return type === 'Abrasive' ? new Grits(layers) : layers;
    }

    private lots(sheet: Sheet | undefined): Scope {
        const home = sheet && AstUtils.getDocument(sheet);
        const names = sheet && namesOfSheet(sheet, (node, name) => this.descriptions.createDescription(node, name, home));
        return new Layers(
            () => (names === undefined ? [] : [names]),
            () => true,
        );
    }

    /** One after the other: most names are found in the first, and finding a file by its address takes time. */
    private *layers(from: AstNode): Iterable<NameMap> {
        const document = AstUtils.getDocument(from);
        const recipe = isRecipe(from) ? undefined : recipeAround(from);
        // A name of the base stays what it is: the variant's block of that name only adjusts it.
        for (const each of recipe === undefined ? [] : [...basesOf(recipe).reverse(), recipe]) {
            const home = AstUtils.getDocument(each);
            yield namesOfRecipe(each, (node, name) => this.descriptions.createDescription(node, name, home));
        }
        const routine = AstUtils.getContainerOfType(from, isRoutine);
        if (routine !== undefined) {
            yield namesOfRoutine(routine, (node, name) => this.descriptions.createDescription(node, name, document));
        }
        for (const each of this.files(document, from)) {
            const names = this.namesOf(each);
            if (names !== undefined) yield names;
        }
    }

    private *files(document: LangiumDocument, from: AstNode): Iterable<LangiumDocument | undefined> {
        yield* this.withUsed(document);
        if (isRun(from) || isWanted(from)) yield* filesAround(document.uri, this.documents);
        else yield* this.filesOfRun(from, document);
        for (const uri of builtInFiles) yield this.documents.getDocument(uri);
    }

    private *withUsed(document: LangiumDocument): Iterable<LangiumDocument | undefined> {
        yield document;
        for (const used of this.usedFiles.of(document)) yield used.document;
    }

    /** A run in a file of its own names the stock that its recipe can name. */
    private *filesOfRun(from: AstNode, document: LangiumDocument): Iterable<LangiumDocument | undefined> {
        const recipe = AstUtils.getContainerOfType(from, isRun)?.recipe?.ref;
        const home = recipe && AstUtils.getDocument(recipe);
        if (home !== undefined && home !== document) yield* this.withUsed(home);
    }

    private namesOf(document: LangiumDocument | undefined): NameMap | undefined {
        const file = document?.parseResult.value as File | undefined;
        if (document === undefined || !isFile(file)) return undefined;
        return namesOfFile(file, (node, name) => this.descriptions.createDescription(node, name, document));
    }
}

/** The recipe whose names are meant: the one around a line, or the one that a run is of. */
function recipeAround(from: AstNode): Recipe | undefined {
    if (isRun(from)) return undefined; // its own recipe is just being looked up
    return AstUtils.getContainerOfType(from, isRun)?.recipe?.ref ?? AstUtils.getContainerOfType(from, isRecipe);
}

/** Papers are named by their grit, with or without the P that stands on their back. */
class Grits implements Scope {
    constructor(private readonly papers: Scope) {}

    getElement(name: string): AstNodeDescription | undefined {
        return this.papers.getElement(name) ?? (/^P\d+$/i.test(name) ? this.papers.getElement(name.slice(1)) : undefined);
    }

    getElements(name: string): Stream<AstNodeDescription> {
        return this.papers.getElements(name);
    }

    getAllElements(): Stream<AstNodeDescription> {
        return this.papers.getAllElements();
    }
}

class Layers implements Scope {
    constructor(
        private readonly layers: () => Iterable<NameMap>,
        private readonly fits: (description: AstNodeDescription) => boolean,
    ) {}

    getElement(name: string): AstNodeDescription | undefined {
        for (const layer of this.layers()) {
            const found = layer.get(name)?.find(this.fits);
            if (found !== undefined) return found;
        }
        return undefined;
    }

    getElements(name: string): Stream<AstNodeDescription> {
        return stream([...this.layers()].flatMap((layer) => (layer.get(name) ?? []).filter(this.fits)));
    }

    getAllElements(): Stream<AstNodeDescription> {
        const nearest = new Map<string, AstNodeDescription>();
        for (const layer of this.layers()) {
            for (const [name, bearers] of layer) {
                const fitting = bearers.find(this.fits);
                if (fitting !== undefined && !nearest.has(name)) nearest.set(name, fitting);
            }
        }
        return stream(nearest.values());
    }
}
