/** The project document: a project as a JSON file, in and out. Its schema is `project-document.schema.json`. */
export { DEFAULT_SHOP_HOURS, defaultSettings } from './default-settings.ts';
export { type ProjectDocumentReading, readProjectDocument } from './document/read-project-document.ts';
export { writeProjectDocument } from './document/write-project-document.ts';
export { documentJsonSchema } from './document-json-schema.ts';
export { documentSchema, type ProjectDocument } from './document-schema.ts';
