"""Any spreadsheet, CSV or pasted table becomes a draft with questions, then a chart."""
