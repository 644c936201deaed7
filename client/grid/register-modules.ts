import {
  CellApiModule,
  CellStyleModule,
  ClientSideRowModelModule,
  ColumnApiModule,
  CustomEditorModule,
  EventApiModule,
  ModuleRegistry,
  PinnedRowModule,
  RenderApiModule,
  RowApiModule,
  RowStyleModule,
  ScrollApiModule,
} from 'ag-grid-community';

/** Only what the sheets use; everything else of the grid library stays out of the bundle. */
ModuleRegistry.registerModules([
  ClientSideRowModelModule,
  CustomEditorModule,
  EventApiModule,
  PinnedRowModule,
  CellStyleModule,
  RowStyleModule,
  ColumnApiModule,
  CellApiModule,
  RowApiModule,
  RenderApiModule,
  ScrollApiModule,
]);

// The library's own checks of options cost size, so only development builds have them.
if (import.meta.env.MODE === 'development') {
  const { ValidationModule } = await import('ag-grid-community');
  ModuleRegistry.registerModules([ValidationModule]);
}
