// The book's contents: a study in, paper and files out.

export type { BookOptions } from "./book.ts";
export { type Book, type BookFile, type BookMaker, bookFiles, makeBook, type Progress, stemOf } from "./book-files.ts";
export { apart, type JigPart, type JigPoint, jigParts } from "./jig/jig-part.ts";
export type { Leaf } from "./paper/leaf.ts";
export { leafSvg } from "./paper/leaf-svg.ts";
export { PAGE_SIZES, type PageSize } from "./paper/page-size.ts";
export { type PdfFacts, writePdf } from "./paper/write-pdf.ts";
