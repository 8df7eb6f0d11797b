# Welch and paired intervals of bag_reference.csv once more, by R. Run: Rscript bag_reference.R
six <- c(152.1, 149.8, 155.0, 147.9, 151.2, 153.6, 150.4, 148.8)
seven <- c(141.0, 138.2, 143.9, 136.1, 139.5, 142.2, 140.8, 135.9)
print(t.test(six, seven)$conf.int, digits = 12)
print(t.test(six, seven, paired = TRUE)$conf.int, digits = 12)
