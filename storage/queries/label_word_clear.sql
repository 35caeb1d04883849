DELETE FROM label_word
