// The list alone, without the search functions and what they need; it comes without types of its own.
declare module 'currency-codes/data.js' {
    const list: readonly { readonly code: string; readonly digits: number; readonly currency: string }[];
    export default list;
}
