"""Any spreadsheet, CSV, page, PDF or pasted table becomes a draft with questions, and the draft a chart.

A file becomes grids of cells (`files`, `workbook`, `oldbook`, `delimited`, `webpage`, `pdf`); on each grid tables are
found by evidence (`recognise`, `bands`, `headers`, `tables`, `long_list`, `plain_text`), their units, kinds and halves
settled (`settle`, `amounts`, `kinds`, `halves`, `joining`) and doubted (`doubts`). What words mean stands in
`vocabulary`, `labels`, `measure_names`, `sizes`, `units` and `figures`. The result is a frozen `draft`.
"""
