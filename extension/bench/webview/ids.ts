/** Names of things drawn once and used from many pictures. Ids from the server may hold any letters. */
export const pathId = (path: string) => `path-${safe(path)}`;
export const woodId = (blank: string, colour: string) => `wood-${safe(blank)}-${safe(colour)}`;
export const url = (id: string) => `url(#${id})`;

function safe(text: string): string {
    return text.replace(/[^\w-]/g, (letter) => `_${letter.charCodeAt(0).toString(16)}_`);
}
