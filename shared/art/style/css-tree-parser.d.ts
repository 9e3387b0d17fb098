/** css-tree's parser without its dictionary of CSS syntax, which is most of the package and needs Node. */
declare module 'css-tree/parser' {
    export { parse as default } from 'css-tree';
}
