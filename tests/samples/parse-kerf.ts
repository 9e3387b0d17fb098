import { createDefaultCoreModule, createDefaultSharedCoreModule, EmptyFileSystem, inject } from 'langium';
import type { File } from '../../language/generated/ast';
import { KerfGeneratedModule, KerfGeneratedSharedModule } from '../../language/generated/module';

const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), KerfGeneratedSharedModule);
const kerf = inject(createDefaultCoreModule({ shared }), KerfGeneratedModule);
shared.ServiceRegistry.register(kerf);

/** Parses one text by the grammar alone: no names, no checks. Each error is "line:column message", 1-based. */
export function parseKerf(text: string): { file: File; errors: string[] } {
    const result = kerf.parser.LangiumParser.parse<File>(text);
    const errors = [
        ...result.lexerErrors.map((error) => `${error.line}:${error.column} ${error.message}`),
        ...result.parserErrors.map((error) => `${error.token.startLine}:${error.token.startColumn} ${error.message}`),
    ];
    return { file: result.value, errors };
}
