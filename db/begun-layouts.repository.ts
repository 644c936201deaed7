import type { Database } from 'better-sqlite3';
import { prepared } from './statements.ts';

/** The layouts of plans whose sheets are being cut, as they were at the last tick. No revision and no undo, like the ticks. */

export interface BegunLayout {
  readonly materialId: string;
  /** The layout's key. */
  readonly layout: string;
  /** JSON, written and read by those who plan. */
  readonly content: string;
  /** So many of its equal sheets, from the first, up to the last one with a piece ticked. */
  readonly begun: number;
}

const sql = {
  ofProject: `SELECT begun_layout.material_id AS materialId, begun_layout.layout AS layout, begun_layout.content AS content, COALESCE(1 + MAX(cut_piece.sheet), 0) AS begun
    FROM begun_layout LEFT JOIN cut_piece ON cut_piece.project_id = begun_layout.project_id AND cut_piece.layout = begun_layout.layout
    WHERE begun_layout.project_id = ? GROUP BY begun_layout.material_id, begun_layout.layout ORDER BY begun_layout.material_id, begun_layout.layout`,
  remove: `DELETE FROM begun_layout WHERE project_id = ? AND material_id = ?`,
  add: `INSERT INTO begun_layout (project_id, layout, material_id, content) VALUES (?, ?, ?, ?)`,
};

export function readBegunLayouts(db: Database, projectId: number): BegunLayout[] {
  return prepared(db, sql.ofProject).all(projectId) as BegunLayout[];
}

/** Puts the layouts of one material in the place of what was stored for it; none where nothing of it is being cut. */
export function replaceBegunLayouts(
  db: Database,
  projectId: number,
  materialId: string,
  layouts: readonly Pick<BegunLayout, 'layout' | 'content'>[],
): void {
  db.transaction(() => {
    prepared(db, sql.remove).run(projectId, materialId);
    for (const { layout, content } of layouts)
      prepared(db, sql.add).run(projectId, layout, materialId, content);
  })();
}
