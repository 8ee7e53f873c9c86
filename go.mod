module scantling

go 1.26
