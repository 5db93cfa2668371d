package chart

func (d *drawing) knit(o *Options) {}
