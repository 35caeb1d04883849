SELECT code FROM prescriber WHERE matched_by = :matched_by
